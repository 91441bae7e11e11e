import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { designToBrief } from "../../src/brief/design-to-brief.ts";
import { readCheckBrief } from "../../src/brief/read.ts";
import { writeBrief } from "../../src/brief/write.ts";
import type { SweepResult } from "../../src/model.ts";
import { calculationOf } from "../../src/report/calculation/calculation.ts";
import { resultJson } from "../../src/report/files/json.ts";
import { check } from "../../src/studies/check.ts";
import { relax } from "../../src/studies/relax.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { answer, lookup, notFinite, random, read } from "./answer.ts";
import { briefTexts } from "./brief-texts.ts";

/** What every result owes: finite numbers in memory and in JSON, and a tally that adds up. */
function owes(result: SweepResult): void {
  const { brief, ...figures } = result;
  expect(notFinite(figures)).toEqual([]);
  expect(notFinite(JSON.parse(resultJson(result)))).toEqual([]);
  const rejected = Object.values(result.rejected).reduce((sum, count) => sum + count, 0);
  expect(result.walked).toBe(result.feasible + rejected);
  expect(Object.values(result.rejected).every((count) => Number.isSafeInteger(count) && count > 0)).toBe(true);
  expect(result.designs.length === 0).toBe(result.feasible === 0);
}

describe("a brief that is right by construction", () => {
  it("reads, and its result is finite and adds up", () => {
    fc.assert(
      fc.property(briefTexts(false), (text) => owes(sweep(read(text)))),
      random(),
    );
  });

  it("reads, and its result is finite and adds up, however large or small the spring", () => {
    fc.assert(
      fc.property(briefTexts(true), (text) => owes(sweep(read(text)))),
      random(),
    );
  });

  it("has its limits priced in finite numbers", () => {
    fc.assert(
      fc.property(briefTexts(false), (text) => {
        const { brief, ...prices } = relax(read(text));
        expect(notFinite(prices)).toEqual([]);
        expect(prices.best === null).toBe(prices.feasible === 0);
      }),
      random(0.1),
    );
  });

  it("has its best design worked through without a figure that is no number", () => {
    fc.assert(
      fc.property(briefTexts(false), (text) => {
        const { brief, designs } = sweep(read(text));
        const [best] = designs;
        if (best === undefined) return;
        const steps = calculationOf(brief, best).chapters.flatMap((chapter) => chapter.steps);
        expect(steps.length).toBeGreaterThan(10);
        expect(steps.filter(({ value }) => Number.isNaN(value))).toEqual([]);
      }),
      random(0.3),
    );
  });

  it("pins its best design to a brief that check judges in finite numbers", () => {
    fc.assert(
      fc.property(briefTexts(false), (text) => {
        const { brief, designs } = sweep(read(text));
        const [best] = designs;
        if (best === undefined) return;
        const result = check(readCheckBrief(writeBrief(designToBrief(brief, best)), "pinned.yaml", lookup));
        const { brief: _, entries, ...figures } = result;
        expect(notFinite(figures)).toEqual([]);
        // A spring that never buckles has no figure to judge there; the table says none, JSON null.
        const judged = entries.map(({ limit, value, ...entry }) => (limit === "buckling" ? entry : { value, ...entry }));
        expect(notFinite(judged)).toEqual([]);
        expect(result.passes).toBe(true);
      }),
      random(0.5),
    );
  });
});

it("a point without force has no tolerance by the inch trade's rule, which is a share of the force", () => {
  const result = sweep(
    read(`practice: handbook
load: { points: [{ length: 46 mm, force: 0 N }, { length: 32 mm, force: { min: 40 N, max: 55 N } }] }
sweep: { wires: [iso-r20], materials: [astm-a228], ends: [squared-ground] }
`),
  );
  expect(result.feasible).toBeGreaterThan(0);
  expect(result.designs[0]?.tolerance.points.map(({ force }) => force === null)).toEqual([true, false]);
  owes(result);
});

/** Sizes at the ends of the number line, and what is no size at all. */
const sizes = fc.oneof(
  fc.constantFrom(
    "0",
    "-0",
    "1",
    "1e15",
    "9.99e14",
    "1e-15",
    "1e16",
    "1e308",
    "1e-308",
    "1e-400",
    "1e999",
    "-1",
    ".5",
    "5.",
    "1,5",
  ),
  fc.double({ min: -1e20, max: 1e20, noNaN: true }).map(String),
  fc.integer({ min: -14, max: 14 }).map((exponent) => `1e${exponent}`),
);

describe("a brief whose numbers are of any size", () => {
  it("gives finite figures that add up, or says what is wrong", () => {
    const changed = fc.tuple(briefTexts(false), fc.array(fc.tuple(fc.nat(30), sizes), { minLength: 1, maxLength: 3 }));
    fc.assert(
      fc.property(changed, ([text, changes]) => {
        const resized = changes.reduce((now, [place, size]) => {
          const numbers = [...now.matchAll(/(?<=: )-?\d[\d.e-]*(?= (?:mm|in|N|lbf|Hz))/g)];
          const { index = 0, 0: number = "" } = numbers[place % Math.max(1, numbers.length)] ?? {};
          return now.slice(0, index) + size + now.slice(index + number.length);
        }, text);
        const given = answer(() => sweep(read(resized)));
        if ("value" in given) owes(given.value);
      }),
      random(),
    );
  });
});
