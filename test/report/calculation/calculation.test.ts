import { all, create, type FactoryFunctionMap } from "mathjs";
import { describe, expect, it } from "vitest";
import { candidateAt } from "../../../src/constrain/design.ts";
import { limitsFor } from "../../../src/constrain/limits/limits.ts";
import { resolveRequirements } from "../../../src/constrain/requirements/requirements.ts";
import type { Design, Dimension, LimitName } from "../../../src/model.ts";
import { calculationOf } from "../../../src/report/calculation/calculation.ts";
import { numbersPutIn, printedNumber, printedValue, stepsBySymbol } from "../../../src/report/calculation/printed.ts";
import { type Derived, inSheetUnits, type Step } from "../../../src/report/calculation/steps.ts";
import { limitWords } from "../../../src/report/text/labels.ts";
import { cases, designOf } from "./designs.ts";

const math = create(all as FactoryFunctionMap);

/** An equation by mathjs, with what its symbols stand for. */
const evaluated = ({ expression, endlessBelow }: Derived, figureOf: (symbol: string) => number): number => {
  const symbols = [...new Set(expression.match(/\p{L}[\p{L}\d]*/gu) ?? [])].filter(
    (word) => !/^(sqrt|atan|log|abs|min|max|pi)$/.test(word),
  );
  if (endlessBelow !== undefined && figureOf(endlessBelow) < 0) return Number.POSITIVE_INFINITY;
  return math.evaluate(expression, Object.fromEntries(symbols.map((symbol) => [symbol, figureOf(symbol)]))) as number;
};

const symbolsOf = (step: Derived, known: ReadonlyMap<string, Step>) =>
  [...new Set(step.expression.match(/\p{L}[\p{L}\d]*/gu) ?? [])].filter((word) => known.has(word));

/** Half of the last digit that is printed. */
const halfDigit = (value: number) =>
  value === 0 || !Number.isFinite(value) ? 0 : 0.5 * 10 ** (Math.floor(Math.log10(Math.abs(value))) - 5);

const near = (a: number, b: number) => a === b || Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b)) + 1e-12;

/** Figures of a design by the name of their cell. */
const FIGURES: Readonly<Record<string, readonly [figure: (design: Design) => number | null, dimension: Dimension]>> = {
  tensileStrength: [(d) => d.tensileStrength, "stress"],
  springIndex: [(d) => d.index, "number"],
  activeTurns: [(d) => d.activeTurns, "number"],
  springRate: [(d) => d.rate, "rate"],
  solidLength: [(d) => d.solidLength, "length"],
  freeLength: [(d) => d.freeLength, "length"],
  pitch: [(d) => d.pitch, "length"],
  pitchAngle: [(d) => d.pitchAngle, "angle"],
  forceAtSolid: [(d) => d.forceAtSolid, "force"],
  stressAtSolid: [(d) => d.stressAtSolid, "stress"],
  solidSafety: [(d) => d.solidSafety, "number"],
  workingSafety: [(d) => d.workingSafety, "number"],
  outsideDiameterAtSolid: [(d) => d.outsideDiameterAtSolid, "length"],
  surgeFrequency: [(d) => d.surgeFrequency, "frequency"],
  fatigueSafety: [(d) => d.fatigueSafety, "number"],
  stressAmplitude: [(d) => d.cyclic?.stressAmplitude ?? null, "stress"],
  springRateHot: [(d) => d.hot?.rate ?? null, "rate"],
  lengthDeviation: [(d) => d.tolerance.freeLength, "length"],
  worstLeastForce1: [(d) => d.tolerance.points[0]?.leastForce ?? null, "force"],
  worstGreatestForce1: [(d) => d.tolerance.points[0]?.greatestForce ?? null, "force"],
  boreRoom: [(d) => d.tolerance.boreRoom ?? null, "length"],
  mass: [(d) => d.mass, "mass"],
  relativeCost: [(d) => d.relativeCost, "number"],
  forceAtPoint1: [(d) => d.points[0]?.force ?? null, "force"],
  stressAtPoint1: [(d) => d.points[0]?.stress ?? null, "stress"],
};

describe.each(cases)("the working of $name", (one) => {
  const { brief } = one;
  const design = designOf(one);
  const working = calculationOf(brief, design);
  const known = stepsBySymbol(working);
  const steps = [...known.values()];
  const derived = steps.filter((step) => step.kind === "derived");
  const full = (symbol: string) => (known.get(symbol) as Step).value;
  const printed = (symbol: string) => Number(printedNumber(full(symbol)).replace("∞", "Infinity"));

  it("gives the engine's figure by every equation, from figures that are not rounded", () => {
    const off = derived.filter((step) => !near(evaluated(step, full), step.value));
    expect(off.map(({ symbol, expression, value }) => `${symbol} = ${expression} is not ${value}`)).toEqual([]);
  });

  it("gives the printed figure by every printed equation, as nearly as rounding lets it", () => {
    const off = derived.filter((step) => {
      const result = evaluated(step, printed);
      if (!Number.isFinite(result)) return result !== step.value;
      // What half a digit in each number put in may move the result by, and half a digit of the result itself.
      const room = symbolsOf(step, known).map((moved) => {
        const by = (sign: number) =>
          evaluated(step, (symbol) => printed(symbol) + (symbol === moved ? sign * halfDigit(printed(symbol)) : 0));
        return Math.max(Math.abs(by(1) - result), Math.abs(by(-1) - result));
      });
      const allowed = 1.01 * room.reduce((sum, one) => sum + one, halfDigit(step.value)) + 1e-12;
      return !(Math.abs(result - printed(step.symbol)) <= allowed);
    });
    expect(off.map(({ symbol }) => symbol)).toEqual([]);
  });

  it("prints numbers put in that evaluate as they stand once their units are left out", () => {
    const off = derived.filter((step) => {
      if (!Number.isFinite(step.value)) return false;
      const units = [...new Set(steps.map(({ unit }) => unit))].filter(Boolean).sort((a, b) => b.length - a.length);
      const bare = units.reduce(
        (text, unit) => text.replaceAll(new RegExp(`(?<=[\\d∞]) ?${unit}(?![\\w/])`, "g"), ""),
        numbersPutIn(step, known),
      );
      const result = math.evaluate(bare.replaceAll("∞", "Infinity")) as number;
      return !near(result, evaluated(step, printed));
    });
    expect(off.map((step) => `${step.symbol} = ${numbersPutIn(step, known)}`)).toEqual([]);
  });

  it("holds the figures of the design under their names", () => {
    const wrong = steps.filter(({ name, value }) => {
      const [figure, dimension] = FIGURES[name] ?? [];
      if (figure === undefined || dimension === undefined) return false;
      return !near(value, inSheetUnits(figure(design) ?? Number.NaN, dimension, brief.units));
    });
    expect(wrong.map(({ name }) => name)).toEqual([]);
    expect(steps.filter(({ name }) => name in FIGURES).length).toBeGreaterThan(14);
    const buckling = steps.find(({ name }) => name === "bucklingDeflection")?.value;
    if (brief.service.seats !== "guided")
      expect(buckling).toBeCloseTo(inSheetUnits(design.bucklingDeflection ?? Number.POSITIVE_INFINITY, "length", brief.units), 8);
  });

  it("ends with the margin of every limit that is asked, as the design has it", () => {
    const margins = steps.filter(({ name }) => name.startsWith("marginOf"));
    const least: Partial<Record<LimitName, number>> = {};
    for (const limit of Object.keys(limitWords) as LimitName[]) {
      const own = margins.filter(({ label }) => label === `margin: ${limitWords[limit].label}`);
      if (own.length > 0) least[limit] = Math.min(...own.map(({ value }) => value));
    }
    const byConstruction = (limit: string) => (limit === "rate" || limit === "clash") && !(limit in least);
    for (const [limit, margin] of Object.entries(design.margins)) {
      if (!byConstruction(limit)) expect(least[limit as LimitName], limit).toBeCloseTo(margin, 8);
    }
    const requirements = resolveRequirements(brief);
    const asked = limitsFor(requirements).filter(({ reported }) => reported);
    expect(margins.length).toBeGreaterThanOrEqual(asked.reduce((sum, { bounds }) => sum + bounds.length, 1));
    expect(candidateAt(brief, requirements, one.choice).rate).toBe(design.rate);
  });

  it("names every step once, with a source, in the order in which they are needed", () => {
    const names = working.chapters.flatMap((chapter) => chapter.steps.map(({ name }) => name.toLowerCase()));
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
    expect(steps.length).toBe(working.chapters.flatMap((chapter) => chapter.steps).length);
    expect(steps.filter(({ source }) => source.trim() === "")).toEqual([]);
    const seen = new Set<string>();
    for (const step of steps) {
      if (step.kind === "derived") expect(symbolsOf(step, known).filter((symbol) => !seen.has(symbol))).toEqual([]);
      seen.add(step.symbol);
    }
  });
});

describe("units of the sheet", () => {
  it("need no factor between force, length and stress, in millimetres and in inches", () => {
    const stress = 1e8;
    expect(inSheetUnits(stress, "stress", { length: "mm", force: "N" })).toBeCloseTo(100, 10);
    // NIST SP 811: 1 psi = 6.894 757 E+03 Pa.
    expect(inSheetUnits(6894.757, "stress", { length: "in", force: "lbf" })).toBeCloseTo(1, 6);
    expect(printedValue({ kind: "given", symbol: "α", name: "angle", label: "", value: 12.5, unit: "°", source: "" })).toBe(
      "12.5°",
    );
  });
});
