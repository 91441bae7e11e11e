import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { designToBrief } from "../../src/brief/design-to-brief.ts";
import { readBrief, readCheckBrief } from "../../src/brief/read.ts";
import { writeBrief } from "../../src/brief/write.ts";
import { readEnds } from "../../src/catalog/ends.ts";
import { readMaterial } from "../../src/catalog/materials.ts";
import { readWireSeries } from "../../src/catalog/wires.ts";
import type { Design, EndStyle, Lookup } from "../../src/model.ts";
import { check } from "../../src/studies/check.ts";
import { relax } from "../../src/studies/relax.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { answer, notFinite, random, lookup as shipped } from "./answer.ts";
import { briefTexts } from "./brief-texts.ts";

/** Numbers from one to another in a million steps, so that none is lost beside zero. */
const between = (least: number, greatest: number) => fc.nat(1e6).map((step) => least + ((greatest - least) * step) / 1e6);

/** The same, the ends among them, as evenly over the powers of ten as over the range. */
const within = (least: number, greatest: number) =>
  fc.oneof(
    fc.constantFrom(least, greatest),
    between(least, greatest),
    between(Math.log(Math.max(least, greatest / 1e9)), Math.log(greatest)).map(Math.exp),
  );

/** Mostly as a spring has it, else anywhere where a number is let in. */
const mostly = (least: number, greatest: number, usual: readonly [number, number]) =>
  fc.oneof({ weight: 6, arbitrary: between(usual[0], usual[1]) }, { weight: 1, arbitrary: within(least, greatest) });

/** Catalogs whose numbers are anywhere where one is let in, though not all of them at once. */
const catalogs = fc
  .record({
    density: mostly(500, 25_000, [7000, 9000]),
    shear: mostly(1e8, 1e12, [6e10, 9e10]),
    ratio: within(1.001, 2.6),
    strength: mostly(1e6, 1e10, [1e9, 3e9]),
    exponent: mostly(0, 1, [0, 0.2]),
    share: mostly(0.01, 1, [0.4, 0.6]),
    sizes: fc.uniqueArray(mostly(1e-6, 1, [5e-4, 4e-3]), { minLength: 4, maxLength: 12 }),
    wireDeviation: mostly(0, 0.01, [0, 3e-5]),
    relativeCost: mostly(1e-3, 1e4, [1, 4]),
    hottest: mostly(50, 2000, [380, 500]),
    dead: mostly(0, 10, [0, 2]),
    solid: mostly(0, 10, [0, 1]),
    ofPitch: between(0, 1),
    ofWires: between(0, 1),
    closed: fc.boolean(),
    ground: fc.boolean(),
  })
  .map((own) => ({
    material: `name: own
source: invented
class: cold drawn
density: ${own.density} kg/m^3
moduli: { youngsModulus: ${own.shear * own.ratio} Pa, shearModulus: ${own.shear} Pa }
strength: { fit: { at: 1 mm, value: ${own.strength} Pa, exponent: ${own.exponent}, diameter: { min: 0.1 mm, max: 20 mm } }, minimum: { between: interpolate, rows: [[0.001 mm, ${own.strength} Pa], [1 m, ${own.strength} Pa]] } }
allowable: { asWound: ${own.share}, setRemoved: ${own.share} }
wireTolerance: [{ upTo: 1 m, plusMinus: ${own.wireDeviation} m }]
temperature: { max: ${own.hottest} K }
relativeCost: ${own.relativeCost}
`,
    wires: `label,diameter\n${own.sizes.map((size, i) => `w${i},${size} m`).join("\n")}\n`,
    // A pitch below the wire is told when the file is read.
    ends: `- { name: own, deadTurns: ${own.dead}, solidExtra: ${own.solid}, pitchTurns: ${Math.min(10, own.ofPitch * own.ofWires * (own.dead + own.solid))}, pitchWires: ${Math.min(10, (1 - own.ofPitch) * own.ofWires * (own.dead + own.solid))}, closed: ${own.closed}, ground: ${own.ground} }\n`,
  }));

/** Which limits are lifted, so that nothing but physics keeps a spring from what the brief asks. */
const lifted = fc.subarray([
  ...["index", "clash", "solidStress", "workingStress", "buckling", "surge"],
  ...["freeLength", "solidLength", "outsideDiameter", "insideDiameter"],
]);

const lookupIn = (own: { readonly material: string; readonly wires: string; readonly ends: string }): Lookup => ({
  series: () => readWireSeries({ file: "own.csv", text: own.wires }, "own"),
  material: () => readMaterial({ file: "own.yaml", text: own.material }),
  ends: (name, from) =>
    name.startsWith("./") ? (readEnds({ file: "ends.yaml", text: own.ends })[0] as EndStyle) : shipped.ends(name, from),
});

const cases = fc.tuple(briefTexts(false), catalogs, lifted).map(([text, own, off]) => ({
  text: `${text
    .replace(/wires: \[[^\]]*\]/, "wires: [./own.csv]")
    .replace(/materials: \[[^\]]*\]/, "materials: [./own.yaml]")
    .replace(
      /ends: \[[^\]]*\]/,
      "ends: [./ends.yaml]",
    )}${off.length > 0 ? `limits: { ${off.map((name) => `${name}: off`).join(", ")} }\n` : ""}`,
  lookup: lookupIn(own),
}));

/** What every spring owes to physics. */
function real(design: Design): void {
  for (const name of [
    "wireDiameter",
    "totalTurns",
    "activeTurns",
    "meanDiameter",
    "rate",
    "freeLength",
    "solidLength",
    "mass",
  ] as const) {
    expect(design[name], name).toBeGreaterThan(0);
  }
  expect(design.insideDiameter).toBeGreaterThan(0);
  expect(design.freeLength).toBeGreaterThanOrEqual(design.solidLength * (1 - 1e-9));
  expect(design.pitch).toBeGreaterThanOrEqual(design.wireDiameter * (1 - 1e-9));
  expect(design.tensileStrength).toBeLessThanOrEqual(1e10 * (1 + 1e-9));
}

describe("any brief of any catalog that is let in", () => {
  it("gives springs that can be, every figure finite or null", () => {
    let fitted = 0;
    fc.assert(
      fc.property(cases, ({ text, lookup }) => {
        const given = answer(() => sweep(readBrief(text, "b.yaml", lookup), { top: 5, nearest: true }));
        if ("problems" in given) return;
        const { brief, ...figures } = given.value;
        expect(notFinite(figures)).toEqual([]);
        for (const design of figures.designs) real(design);
        if (figures.feasible > 0) fitted++;
      }),
      random(10),
    );
    expect(fitted).toBeGreaterThan(10);
  });

  it("has its limits priced in finite figures", () => {
    fc.assert(
      fc.property(cases, ({ text, lookup }) => {
        const given = answer(() => relax(readBrief(text, "b.yaml", lookup)));
        if ("problems" in given) return;
        const { brief, ...figures } = given.value;
        expect(notFinite(figures)).toEqual([]);
      }),
      random(1),
    );
  });

  it("pins a design to a brief that check judges in finite figures", () => {
    fc.assert(
      fc.property(cases, ({ text, lookup }) => {
        const given = answer(() => {
          const {
            brief,
            designs: [best],
          } = sweep(readBrief(text, "b.yaml", lookup), { top: 1 });
          return best && check(readCheckBrief(writeBrief(designToBrief(brief, best)), "pinned.yaml", lookup));
        });
        if ("problems" in given || given.value === undefined) return;
        const { brief, entries, ...figures } = given.value;
        expect(notFinite(figures)).toEqual([]);
      }),
      random(2),
    );
  });
});

it("a spring of as few turns as they may miss by has no greatest force, and none that is below zero", () => {
  const text = `practice: handbook
load: { force: 30 N, deflection: 1 mm }
limits: { turns: off }
design: { material: astm-a228, wire: 1 mm, ends: squared, meanDiameter: 10 mm, activeTurns: 0.25, freeLength: 12 mm }
`;
  const { design } = check(readCheckBrief(text, "b.yaml", shipped));
  expect(notFinite(design)).toEqual([]);
  expect(design.tolerance.points).toMatchObject([{ greatestForce: null, leastForce: expect.any(Number) }]);
});
