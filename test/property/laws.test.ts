import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { readBrief } from "../../src/brief/read.ts";
import type { Brief, Design, Limits, Load, Window } from "../../src/model.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { shipped } from "../catalog/shipped.ts";
import { above, briefs, CASES, type LoadCase, RANDOM } from "./briefs.ts";

// Each brief is swept in full several times.
vi.setConfig({ testTimeout: 120_000 });

/** Every spring that fits, ranked. */
const all = (brief: Brief) => sweep(brief, { top: 1e6 });

const nameOf = ({ material, wireDiameter, ends, totalTurns, meanDiameter }: Design) =>
  [material, wireDiameter, ends, totalTurns, meanDiameter].join();

const namesOf = (brief: Brief) => new Set(all(brief).designs.map(nameOf));

/** A window with both ends moved outwards. */
const wider = ({ min, max }: Window): Window => ({
  ...(min === undefined ? {} : { min: min / 1.2 }),
  ...(max === undefined ? {} : { max: max * 1.2 }),
});

/** Ways to ease one limit; a brief that does not ask it stays as it is. */
const EASINGS: Readonly<Record<string, (brief: Brief) => Brief>> = {
  index: limitsWith(({ index }) => ({ index: index === "off" ? index : wider(index) })),
  turns: limitsWith(({ turns }) => ({ turns: turns === "off" ? turns : wider(turns) })),
  workingStress: limitsWith(() => ({ workingStress: "off" })),
  solidStress: limitsWith(() => ({ solidStress: "off" })),
  buckling: limitsWith(() => ({ buckling: "off" })),
  surge: limitsWith(() => ({ surge: "off" })),
  fatigue: limitsWith(() => ({ fatigue: "off" })),
  loadTolerance: limitsWith(() => ({ loadTolerance: "off" })),
  bore: (brief) => ({
    ...brief,
    envelope: { ...brief.envelope, ...(brief.envelope.bore && { bore: brief.envelope.bore * 1.2 }) },
  }),
  outsideDiameter: envelopeWith("outsideDiameter"),
  insideDiameter: envelopeWith("insideDiameter"),
  solidLength: envelopeWith("solidLength"),
};

function limitsWith(eased: (limits: Limits) => Partial<Limits>) {
  return (brief: Brief): Brief => ({ ...brief, limits: { ...brief.limits, ...eased(brief.limits) } });
}

function envelopeWith(name: "outsideDiameter" | "insideDiameter" | "solidLength") {
  return (brief: Brief): Brief => {
    const window = brief.envelope[name];
    return window === undefined ? brief : { ...brief, envelope: { ...brief.envelope, [name]: wider(window) } };
  };
}

describe.each(CASES)("$load, turns any: $turnsAny", ({ load, turnsAny }) => {
  it("loses no spring that fits when one limit is eased", () => {
    let compared = 0;
    fc.assert(
      fc.property(briefs(load, turnsAny), fc.constantFrom(...Object.keys(EASINGS)), (brief, name) => {
        const eased = namesOf((EASINGS[name] as (brief: Brief) => Brief)(brief));
        const asAsked = [...namesOf(brief)];
        expect(asAsked.filter((one) => !eased.has(one))).toEqual([]);
        compared += asAsked.length;
      }),
      RANDOM,
    );
    expect(compared).toBeGreaterThan(above(0));
  });

  it("finds the same springs and the same tally in whatever order its lists stand", () => {
    fc.assert(
      fc.property(briefs(load, turnsAny), (brief) => {
        const { wires, materials, ends } = brief.sweep;
        const turned = {
          ...brief.sweep,
          wires: [...wires].reverse(),
          materials: [...materials].reverse(),
          ends: [...ends].reverse(),
        };
        const [one, other] = [all(brief), all({ ...brief, sweep: turned })];
        expect(other.rejected).toEqual(one.rejected);
        expect(other.designs.map(nameOf).sort()).toEqual(one.designs.map(nameOf).sort());
      }),
      RANDOM,
    );
  });

  it("ranks as the whole set sorted, and its front is what no other of the set betters", () => {
    fc.assert(
      fc.property(briefs(load, turnsAny), (brief) => {
        const { designs } = all(brief);
        const { designs: first, front } = sweep(brief, { top: 5 });
        expect(first.map(nameOf)).toEqual(designs.slice(0, 5).map(nameOf));
        expect(designs.map(({ mass }) => mass)).toEqual(designs.map(({ mass }) => mass).sort((a, b) => a - b));
        expect(designs.filter((one) => !front.some((other) => isAsGood(other, one, SLACK)))).toEqual([]);
        const bettered = (one: Design) => designs.some((other) => isAsGood(other, one, 0) && !isAsGood(one, other, SLACK));
        expect(front.filter(bettered)).toEqual([]);
      }),
      RANDOM,
    );
  });
});

/** Figures of a solved diameter are equal but for their last digit. */
const SLACK = 1e-12;

const isAsGood = (a: Design, b: Design, slack: number) =>
  a.outsideDiameter <= b.outsideDiameter * (1 + slack) && a.freeLength <= b.freeLength * (1 + slack);

describe("all lengths twice as large and all forces four times", () => {
  it.each(CASES)("give the same indices, stresses and margins: $load, turns any: $turnsAny", ({ load, turnsAny }) => {
    let compared = 0;
    fc.assert(
      fc.property(briefs(load as LoadCase, turnsAny), (any) => {
        // Tables of tolerances and of what springs endured are for real sizes.
        const brief: Brief = { ...any, practice: "handbook", limits: { ...any.limits, loadTolerance: "off", fatigue: "off" } };
        const [small, large] = [all(brief), all(doubled(brief))];
        expect(large.rejected).toEqual(small.rejected);
        for (const [i, one] of small.designs.entries()) {
          const other = large.designs[i] as Design;
          expect(other.index).toBeCloseTo(one.index, 9);
          expect(other.mass / one.mass).toBeCloseTo(8, 9);
          expect(other.stressAtSolid / one.stressAtSolid).toBeCloseTo(1, 9);
          for (const [name, margin] of Object.entries(one.margins)) expect(other.margins[name as "index"]).toBeCloseTo(margin, 8);
        }
        compared += small.designs.length;
      }),
      RANDOM,
    );
    expect(compared).toBeGreaterThan(0);
  });
});

/** Twice the size in every length, by a power of two so that no digit is lost. */
function doubled(brief: Brief): Brief {
  const { envelope, sweep, limits, service } = brief;
  const window = ({ min, max }: Window) => ({ ...(min && { min: 2 * min }), ...(max && { max: 2 * max }) });
  const room = Object.fromEntries(
    Object.entries(envelope).map(([name, value]) => [name, typeof value === "number" ? 2 * value : window(value as Window)]),
  );
  const { clash } = limits;
  return {
    ...brief,
    load: doubledLoad(brief.load),
    envelope: room,
    limits: { ...limits, clash: clash !== "off" && "length" in clash ? { length: 2 * clash.length } : clash },
    service: { ...service, ...(service.frequency && { frequency: service.frequency / 2 }) },
    sweep: {
      ...sweep,
      meanDiameter: sweep.meanDiameter === "exact" ? "exact" : { step: 2 * sweep.meanDiameter.step },
      wires: sweep.wires.map((series) => ({
        ...series,
        wires: series.wires.map((wire) => ({ ...wire, diameter: 2 * wire.diameter })),
      })),
      materials: sweep.materials.map((material) => {
        const { fit } = material.strength;
        if (fit === undefined) return material;
        const doubled = fit.map((piece) => ({
          ...piece,
          at: 2 * piece.at,
          diameter: window(piece.diameter) as typeof piece.diameter,
        }));
        return { ...material, strength: { ...material.strength, fit: doubled } };
      }),
    },
  };
}

function doubledLoad(load: Load): Load {
  const by = <T extends object>(value: T, factor: number): T =>
    Object.fromEntries(Object.entries(value).map(([name, number]) => [name, factor * number])) as T;
  const point = <T extends { length: number; force: object }>(one: T): T => ({
    ...one,
    length: 2 * one.length,
    force: by(one.force, 4),
  });
  switch (load.kind) {
    case "forceAtDeflection":
      return { ...load, force: by(load.force, 4), deflection: 2 * load.deflection };
    case "points":
      return { ...load, points: load.points.map(point) };
    case "rateAndPoint":
      return { ...load, rate: by(load.rate, 2), point: point(load.point) };
    case "rateAndLargestForce":
      return { ...load, rate: by(load.rate, 2), largestForce: 4 * load.largestForce };
  }
}

describe("a brief in inches and pounds-force", () => {
  it("has the springs of the same brief in millimetres and newtons, to twelve digits", () => {
    const brief = (length: (mm: number) => string, force: (newton: number) => string, lengths: readonly number[]) => {
      const [light, travel, bore, free] = lengths as readonly [number, number, number, number];
      return readBrief(
        `practice: handbook
load:
  points:
    - { length: ${length(40)}, force: { min: ${force(light)}, max: ${force(1.4 * light)} } }
    - { length: ${length(40 - travel)}, force: { min: ${force(2 * light)}, max: ${force(2.6 * light)} } }
envelope: { bore: ${length(bore)}, freeLength: { max: ${length(free)} } }
sweep: { wires: [iso-r20], materials: [astm-a228, en-sm], ends: [squared-ground, squared], meanDiameter: { step: ${length(0.5)} } }
`,
        "units.yaml",
        shipped,
      );
    };
    let compared = 0;
    fc.assert(
      fc.property(
        fc.tuple(
          fc.integer({ min: 10, max: 60 }),
          fc.integer({ min: 6, max: 16 }),
          fc.integer({ min: 12, max: 30 }),
          fc.integer({ min: 50, max: 90 }),
        ),
        (lengths) => {
          const metric = all(
            brief(
              (mm) => `${mm} mm`,
              (newton) => `${newton} N`,
              lengths,
            ),
          );
          const inch = all(
            brief(
              (mm) => `${mm / 25.4} in`,
              (newton) => `${newton / 4.4482216152605} lbf`,
              lengths,
            ),
          );
          expect(inch.rejected).toEqual(metric.rejected);
          for (const [i, one] of metric.designs.entries()) {
            const other = inch.designs[i] as Design;
            for (const name of ["mass", "rate", "freeLength", "stressAtSolid", "outsideDiameter", "solidSafety"] as const)
              expect(Math.abs(other[name] / one[name] - 1)).toBeLessThan(1e-12);
          }
          compared += metric.designs.length;
        },
      ),
      { ...RANDOM, numRuns: Math.min(RANDOM.numRuns, 25) },
    );
    expect(compared).toBeGreaterThan(0);
  });
});
