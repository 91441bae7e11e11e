import { parseExpression } from "vega";
import { expressionInterpreter } from "vega-interpreter";
import { describe, expect, it } from "vitest";
import { chartExpressions, type ExpressionNode } from "../../src/explorer/charts/expressions.ts";

const parsed = (text: string) => parseExpression(text) as unknown as ExpressionNode;

const datum = { a: 3, b: -2, name: "en-sh", none: null };
const signals = { $axis: "a", $offset: 0.5, $brushed: [[1, 4]], $nothing: null };

/** Functions of a chart, one of which needs its own context, as those that look up scales and data do. */
const functions = {
  context: { data: { kept: [1, 2] } },
  data(name: string) {
    return (this as unknown as { context: { data: Record<string, number[]> } }).context.data[name] ?? [];
  },
  inrange: (value: number, [low, high]: readonly [number, number]) => value >= low && value <= high,
  scale: (name: string, value: number) => `${name} ${value}`,
  middle: (a: number, b: number, c: number) => [a, b, c].sort((x, y) => x - y)[1],
};

const expressions = [
  "datum.a",
  "datum['name']",
  "datum[axis] + offset * 2 - datum.b / 4",
  "!length(data('kept')) || inrange(datum.a, brushed[0])",
  "length(data('lost')) && datum.a",
  "datum.a > 2 ? (datum.b < 0 ? 'both' : 'first') : 'none'",
  "nothing === null && datum.none !== 0",
  "datum.a >= 3 && datum.b <= -2",
  "_scale('x', datum.a)",
  "middle(datum.a, datum.b, offset)",
  "isFinite(datum.a)",
  "item.size * 2",
  // Left to the interpreter.
  "PI * datum.a",
  "-datum.a",
  "pow(datum.a, 2)",
  "[datum.a, offset]",
  "test(/sh$/, datum.name)",
];

describe("an expression of a chart", () => {
  it.each(expressions)("gives what Vega's interpreter gives: %s", (text) => {
    const channels = { size: { ast: parsed(text) } };
    const encoding = { marktype: "symbol", channels };
    const [ours, theirs] = [chartExpressions, expressionInterpreter].map((one) => {
      const item: Record<string, unknown> = { datum, size: 7 };
      const isChanged = one.encode({ functions }, encoding)(item, signals);
      return { isChanged, size: item.size };
    });
    expect(ours).toEqual(theirs);
    expect(ours?.size).not.toBeUndefined();
  });

  it("of a datum alone gives what the interpreter gives", () => {
    const given = { ast: parsed("datum[axis] * 2") };
    expect(chartExpressions.parameter({ functions }, given)(datum, signals)).toBe(6);
  });

  it("says whether it changed the mark, and leaves one that reaches from place to place to the interpreter", () => {
    const span = { marktype: "rect", channels: { x: { ast: parsed("datum.a") }, x2: { ast: parsed("9") } } };
    const encode = chartExpressions.encode({ functions }, span);
    const item: Record<string, unknown> = { datum };
    expect(encode(item, signals)).toBe(1);
    expect(item.width).toBe(6);
    expect(encode(item, signals)).toBe(0);
  });

  it("reaches no function through a datum", () => {
    const step = chartExpressions.parameter({ functions }, { ast: parsed("datum.name.replace") });
    expect(step(datum, signals)).toBeUndefined();
  });
});
