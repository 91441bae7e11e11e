import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stepFile } from "../../../src/report/solid/step.ts";
import { pairAt, solidOf } from "./springs.ts";
import { exactVolume, leastBetween, lint, readBack, StepFile } from "./step-file.ts";

const cases = [
  ["squared", "free", "right", {}],
  ["squared-ground", "free", "right", {}],
  ["squared-ground", "open", "left", { totalTurns: 8.25 }],
  ["plain", "free", "left", { totalTurns: 6.6 }],
  ["plain-ground", "free", "right", {}],
  ["squared", "solid", "left", {}],
  ["squared-ground", "solid", "right", {}],
  ["squared-ground", "free", "right", { wireDiameter: 0.02, meanDiameter: 0.18, freeLength: 0.5, solidLength: 0.18 }],
] as const;

describe.each(cases)("a %s spring, %s, %s-hand", (style, state, hand, changes) => {
  const solid = solidOf(style, state, changes, { order: { hand } });
  const { coil } = solid.bodies[0]!;
  const text = stepFile(solid);

  it("closes: loops run head to tail, every edge is passed once each way, and it is one ball", () => {
    expect(lint(text)).toEqual([]);
  });

  it("is within 1 µm of the exact tube, faces outwards, fills its volume and its box", () => {
    const { deviation, volume, inwards, low, high } = readBack(text, coil, hand === "left");
    expect(deviation).toBeLessThan(0.001);
    expect(inwards).toBe(0);
    expect(Math.abs(volume / exactVolume(coil) - 1)).toBeLessThan(1e-4);
    const outside = (coil.meanDiameter + coil.wireDiameter) / 2;
    expect(Math.abs(low[2]!)).toBeLessThan(0.01);
    expect(Math.abs(high[2]! - coil.length)).toBeLessThan(0.01);
    for (const reach of [-low[0]!, high[0]!, -low[1]!, high[1]!]) expect(Math.abs(reach - outside)).toBeLessThan(0.01);
  });

  it("has no face of more than one turn", () => {
    const faces = new StepFile(text).all("ADVANCED_FACE").length - (coil.ground ? 4 : 2);
    expect(faces / 2).toBeGreaterThanOrEqual(coil.totalTurns);
  });

  it("keeps its turns from touching, and says so where that makes it longer", () => {
    const between = leastBetween(coil) - coil.wireDiameter;
    expect(between).toBeGreaterThan(0.002);
    if (state === "solid") expect(between).toBeLessThan(0.004);
    expect(text.includes("drawn longer")).toBe(state === "solid");
  });
});

describe("any spring", () => {
  const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const any = fc.record({
    style: fc.constantFrom("squared", "squared-ground", "plain", "plain-ground"),
    hand: fc.constantFrom("right", "left"),
    state: fc.constantFrom("free", "solid"),
    wire: size(0.0001, 0.02),
    index: size(2.2, 22),
    turns: size(3, 8),
    slope: size(0.02, 0.25),
  });

  it("with an active turn and more closes, keeps its accuracy and does not touch itself", () => {
    fc.assert(
      fc.property(any, ({ style, hand, state, wire, index, turns, slope }) => {
        const meanDiameter = index * wire;
        const freeLength = (turns + 1.5) * wire + turns * slope * Math.PI * meanDiameter;
        const outsideDiameterAtSolid = 1.02 * meanDiameter + wire;
        const changes = { wireDiameter: wire, meanDiameter, totalTurns: turns, freeLength, outsideDiameterAtSolid, points: [] };
        const solid = solidOf(style, state, changes, { order: { hand } });
        const { coil } = solid.bodies[0]!;
        const text = stepFile(solid);
        expect(lint(text)).toEqual([]);
        const { deviation, volume, inwards, low, high } = readBack(text, coil, hand === "left");
        expect(deviation).toBeLessThan(0.001);
        expect(inwards).toBe(0);
        expect(Math.abs(volume / exactVolume(coil) - 1)).toBeLessThan(1e-4);
        expect(Math.abs(low[2]!)).toBeLessThan(0.01);
        expect(Math.abs(high[2]! - coil.length)).toBeLessThan(0.01);
        expect(leastBetween(coil) - coil.wireDiameter).toBeGreaterThan(0.002);
      }),
      { seed: 16, numRuns: 6 },
    );
  });
});

describe.each(["free", "open", "solid"])("a pair, %s,", (state) => {
  const solid = pairAt(state);
  const text = stepFile(solid);

  it("is two closed solids of opposite hands in one file, each with its own volume", () => {
    expect(lint(text)).toEqual([]);
    expect([...text.matchAll(/MANIFOLD_SOLID_BREP\('(\w+)'/g)].map(([, name]) => name)).toEqual(["outer", "inner"]);
    for (const [i, { coil, hand }] of solid.bodies.entries()) {
      const { deviation, volume, inwards } = readBack(text, coil, hand === "left", i);
      expect(deviation).toBeLessThan(0.001);
      expect(inwards).toBe(0);
      expect(Math.abs(volume / exactVolume(coil) - 1)).toBeLessThan(1e-4);
    }
  });

  it("stands between the same seats, but for what keeps turns apart", () => {
    const [outer, inner] = solid.bodies.map(({ coil }) => coil.length);
    expect(Math.abs(outer! - inner!)).toBeLessThan(0.1);
    // The outer of 7 turns of 3 mm is solid at 21 mm, the inner of 6 turns of 2 mm only at 12 mm.
    expect(inner!).toBeCloseTo({ free: 58, open: 38, solid: 21 }[state]!, 9);
  });
});

describe("a broken file", () => {
  const text = stepFile(solidOf("squared-ground"));
  const once = (from: RegExp, to: string) => {
    const violated = text.replace(from, to);
    expect(violated).not.toBe(text);
    return violated;
  };

  it.each([
    ["an edge in the wrong direction", /(ORIENTED_EDGE\('',\*,\*,#\d+,)\.T\./, "$1.F."],
    ["a face that faces inwards", /(ADVANCED_FACE\('',\(#\d+\),#\d+,)\.T\./, "$1.F."],
    ["a bound that runs the other way", /(FACE_OUTER_BOUND\('',#\d+,)\.T\./, "$1.F."],
    ["a face less", /(CLOSED_SHELL\('',\()#\d+,/, "$1"],
    ["two edges of a loop swapped", /(EDGE_LOOP\('',\()(#\d+),(#\d+)/, "$1$3,$2"],
    ["an entity less", /^#\d+=CARTESIAN_POINT.*\n/m, ""],
  ])("with %s is found", (_title, from, to) => {
    expect(lint(once(from, to)).length).toBeGreaterThan(0);
  });

  it("with a face inside out is found by its surfaces too", () => {
    const { coil } = solidOf("squared-ground").bodies[0]!;
    const violated = readBack(once(/(ADVANCED_FACE\('',\(#\d+\),#\d+,)\.T\./, "$1.F."), coil, false);
    expect(violated.inwards).toBeGreaterThan(0);
    expect(Math.abs(violated.volume / exactVolume(coil) - 1)).toBeGreaterThan(1e-4);
  });
});

describe("what a file says of itself", () => {
  const title = "Größe 5 'µ' \\ ☃ 𝔸";
  const text = stepFile(solidOf("squared", "closed", {}, { title }));

  it("is in printable ASCII, all else coded as the format asks", () => {
    expect(text).toMatch(/^[ -~\n]*$/);
    expect(text).toContain("PRODUCT('Gr\\X4\\000000F6\\X0\\\\X4\\000000DF\\X0\\e 5 ''\\X4\\000000B5\\X0\\'' \\\\ ");
    expect(text).toContain("\\X4\\0001D538\\X0\\'");
  });

  it.each([
    ["state", "closed: length 50 mm, force 45.48 N"],
    ["wire", "2 mm, W20 of shop-wire"],
    ["material", "shop-steel"],
    ["rate", "5.685 N/mm"],
    ["free length", "58 mm"],
    ["hand", "right; the order does not state it"],
  ])("has its %s among its properties and in its header", (name, value) => {
    expect(text).toContain(`DESCRIPTIVE_REPRESENTATION_ITEM('${name}','${value}')`);
    expect(text.slice(0, text.indexOf("DATA;"))).toContain(`'${name}: ${value}'`);
  });

  it("says who made it and what it is not, and bears no date", () => {
    expect(text).toMatch(/'generated by coilsieve \d+\.\d+\.\d+, screening only'/);
    expect(text).not.toMatch(/\d{4}-\d\d-\d\d/);
  });
});
