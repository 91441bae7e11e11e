import { evaluate as byMathjs } from "mathjs";
import { describe, expect, it } from "vitest";
import { evaluate, withSymbols } from "../../../src/report/calculation/expression.ts";

const values: Readonly<Record<string, number>> = { d: 2, D: 16, τ1: 300, Na: 7.5, k: 5.7 };
const figureOf = (symbol: string) => values[symbol] as number;

describe("an expression", () => {
  it.each([
    "1 - 2 - 3",
    "12 / 2 / 3 * 4",
    "2 * d^3",
    "10^-6 * D / d^2",
    "(d + D) * (d - D)^2",
    "max(0, d - D, 1 - Na) + min(d, D)",
    "sqrt(D^2 + (d^2 - Na^2) / pi^2)",
    "atan(d / (pi * D)) * 180 / pi",
    "log(D / d) / abs(d - D)",
    "65.92 * d^3.3 / D^1.6",
    "τ1 * 8 * k / (pi * d^3)",
  ])("%s is worth what mathjs makes of it", (expression) => {
    expect(evaluate(expression, figureOf)).toBeCloseTo(byMathjs(expression, { ...values }) as number, 12);
  });

  it.each(["d +", "(d", "d D", "2 & d", "sqrt d", "d)"])("%s is no expression", (expression) => {
    expect(() => evaluate(expression, figureOf)).toThrow(Error);
  });

  it("has its symbols replaced and nothing else, told where a power follows", () => {
    const put = withSymbols("max(d^2, pi * D)", (symbol, raised) => (raised ? `(${symbol}!)` : `${symbol}!`));
    expect(put).toBe("max((d!)^2, pi * D!)");
  });
});
