import { describe, expect, it } from "vitest";
import { isSold, madeSizes, wirePropertiesAt, wireTolerance } from "../../src/constrain/candidate/wire-properties.ts";
import { Evaluator } from "../../src/constrain/evaluator.ts";
import { REJECTION_ORDER, RejectionCounts, slotOf } from "../../src/constrain/rejection-counts.ts";
import { resolveRequirements } from "../../src/constrain/requirements/requirements.ts";
import type { Material, StrengthFit } from "../../src/model.ts";
import { type Change, plainBrief, STEEL, WIRE } from "./plain.ts";

const rows = [
  { diameter: 1e-3, strength: 2000e6 },
  { diameter: 4e-3, strength: 1600e6 },
];
const pieces = [
  { at: 1e-3, value: 2200e6, exponent: 0.1, diameter: { min: 0.5e-3, max: 2e-3 } },
  { at: 1e-3, value: 2300e6, exponent: 0.2, diameter: { min: 2e-3, max: 6e-3 } },
];
const materialOf = (strength: Material["strength"], change: Partial<Material> = {}): Material => ({
  ...STEEL,
  strength,
  ...change,
});
const remembered = { confidence: "memory" } as const;
const tabled = (between: "interpolate" | "next-row", confidence: "high" | "memory" = "high") =>
  materialOf({ minimum: { between, rows, confidence }, fit: pieces.map((piece) => ({ ...piece, ...remembered })) });

describe("a material at a wire size", () => {
  it("has the strength of its rows as the table says, or of its fit where that is asked", () => {
    const strength = (material: Material, basis: "minimum" | "fit") =>
      wirePropertiesAt(material, 2e-3, basis)?.tensileStrength as number;
    expect(strength(tabled("interpolate"), "minimum")).toBeCloseTo(1800e6, -2);
    expect(strength(tabled("next-row"), "minimum")).toBe(1600e6);
    expect(strength(tabled("next-row"), "fit")).toBeCloseTo(2200e6 / 2 ** 0.1, -2);
  });

  it("has the fit of the piece that its size lies in, the lower at a border and a billionth above it", () => {
    const at = (diameter: number) => wirePropertiesAt(tabled("next-row"), diameter, "fit")?.tensileStrength as number;
    expect(at(2e-3 * (1 + 5e-10)) / (2200e6 / 2 ** 0.1)).toBeCloseTo(1, 8);
    expect(at(2.1e-3) / (2300e6 / 2.1 ** 0.2)).toBeCloseTo(1, 9);
  });

  it("says on what its strength rests, and where that is from memory", () => {
    const basis = (material: Material, asked: "minimum" | "fit") => wirePropertiesAt(material, 2e-3, asked)?.strengthBasis;
    expect(basis(tabled("next-row"), "minimum")).toBe("minimum");
    expect(basis(tabled("next-row", "memory"), "minimum")).toBe("minimum, from memory");
    expect(basis(tabled("next-row"), "fit")).toBe("fit, from memory");
    expect(basis(STEEL, "minimum")).toBe("stated");
  });

  it("says piece by piece which part of a fit is from memory", () => {
    const [first, second] = pieces as [StrengthFit, StrengthFit];
    const material = materialOf({ fit: [first, { ...second, ...remembered }] });
    expect(wirePropertiesAt(material, 2e-3, "fit")?.strengthBasis).toBe("fit");
    expect(wirePropertiesAt(material, 2.1e-3, "fit")?.strengthBasis).toBe("fit, from memory");
  });

  it("says where the row that gives its strength, or one of the two that it lies between, is inferred", () => {
    const inferred = [...rows, { diameter: 8e-3, strength: 1400e6, inferred: true as const }];
    const basis = (between: "interpolate" | "next-row", diameter: number) =>
      wirePropertiesAt(materialOf({ minimum: { between, rows: inferred } }), diameter, "minimum")?.strengthBasis;
    expect(basis("next-row", 4e-3)).toBe("minimum");
    expect(basis("next-row", 4.1e-3)).toBe("minimum, inferred");
    expect(basis("interpolate", 4e-3)).toBe("minimum");
    expect(basis("interpolate", 4.1e-3)).toBe("minimum, inferred");
    expect(basis("interpolate", 3.9e-3)).toBe("minimum");
  });

  it("falls back on the fit where it has no rows, and on its one strength where it has neither", () => {
    const fitted = materialOf({ fit: pieces });
    expect(wirePropertiesAt(fitted, 2e-3, "minimum")?.strengthBasis).toBe("fit");
    expect(wirePropertiesAt(STEEL, 2e-3, "fit")).toMatchObject({ strengthBasis: "stated", tensileStrength: 2000e6 });
  });

  it("with no strength at all is a fault of ours, which names it", () => {
    expect(() => wirePropertiesAt(materialOf({}), 2e-3, "minimum")).toThrow("material steel has no strength for basis minimum");
  });

  it.each([
    ["rows", tabled("next-row"), "minimum", 1e-3, 4e-3],
    ["fit", tabled("next-row"), "fit", 0.5e-3, 6e-3],
    ["one strength", STEEL, "minimum", 0.5e-3, 5e-3],
  ] as const)("is made in the sizes of its %s, ends included to a billionth, and in no other", (_, material, basis, min, max) => {
    const made = (diameter: number) => wirePropertiesAt(material, diameter, basis) !== null;
    expect([made(min), made(max), made(min * (1 - 5e-10)), made(max * (1 + 5e-10))]).toEqual([true, true, true, true]);
    expect([made(min * (1 - 5e-9)), made(max * (1 + 5e-9))]).toEqual([false, false]);
    expect(madeSizes(material, basis)).toEqual({ min, max });
  });

  it("has the moduli of the first row that its size is up to, and is not made beyond the last", () => {
    const moduli = [
      { upTo: 1e-3, youngsModulus: 200e9, shearModulus: 80e9 },
      { upTo: 3e-3, youngsModulus: 190e9, shearModulus: 75e9 },
    ];
    const material = materialOf(STEEL.strength, { moduli });
    const shear = (diameter: number) => wirePropertiesAt(material, diameter, "minimum")?.shearModulus ?? null;
    expect([shear(1e-3), shear(1e-3 * (1 + 5e-10)), shear(1.1e-3), shear(3e-3), shear(3.1e-3)]).toEqual([
      80e9,
      80e9,
      75e9,
      75e9,
      null,
    ]);
    expect(madeSizes(material, "minimum")).toEqual({ min: 0.5e-3, max: 3e-3 });
    expect(wirePropertiesAt(material, 2e-3, "minimum")?.youngsModulus).toBe(190e9);
  });

  it("has the tolerance of the first row that its size is up to, or none", () => {
    const material = materialOf(STEEL.strength, {
      wireTolerance: [
        { upTo: 1e-3, plusMinus: 1e-5 },
        { upTo: 3e-3, plusMinus: 2e-5 },
      ],
    });
    const at = (diameter: number) => wireTolerance(material, diameter);
    expect([at(1e-3), at(1e-3 * (1 + 5e-10)), at(1.1e-3), at(3.1e-3), wireTolerance(STEEL, 1e-3)]).toEqual([
      1e-5,
      1e-5,
      2e-5,
      null,
      null,
    ]);
    expect(wirePropertiesAt(material, 2e-3, "minimum")?.wireDeviation).toBe(2e-5);
  });

  it("is sold in a wire whose series names it, or names none", () => {
    const sold = (soldIn?: string[]) => isSold(soldIn === undefined ? WIRE : { ...WIRE, soldIn }, STEEL);
    expect([sold(), sold(["brass", "steel"]), sold(["brass"]), sold([])]).toEqual([true, true, false, false]);
  });
});

describe("the evaluator of candidates", () => {
  const refusal = (change: Change, diameter = 2e-3) => {
    const brief = plainBrief(change);
    const slot = new Evaluator(brief, resolveRequirements(brief)).enter(0, { ...WIRE, ...change.wire, diameter });
    return slot === null ? null : REJECTION_ORDER[slot];
  };

  it("refuses a size that is not made, and a wire that nobody sells unless that is lifted", () => {
    expect([refusal({}), refusal({}, 6e-3)]).toEqual([null, "wire"]);
    const foreign = { wire: { soldIn: ["brass"] } };
    expect([refusal(foreign), refusal({ ...foreign, limits: { lifted: ["wire"] } })]).toEqual(["wire", null]);
    expect(refusal({ limits: { lifted: ["wire"] } }, 6e-3)).toBe("wire");
  });

  it("refuses heat that the material does not bear, the hottest that it does being no heat", () => {
    const hot = (temperature: number) => refusal({ service: { temperature } });
    expect([hot(400), hot(401)]).toEqual([null, "temperature"]);
    expect(refusal({ service: { temperature: 401 }, limits: { lifted: ["temperature"] } })).toBeNull();
  });

  it("tells of each material and wire that it is about to take", () => {
    const brief = plainBrief();
    const told: string[] = [];
    new Evaluator(brief, resolveRequirements(brief), (order, { label }) => told.push(`${order} ${label}`)).enter(0, WIRE);
    expect(told).toEqual(["0 2 mm"]);
  });
});

describe("a tally", () => {
  it("is as much as was walked, by the limit at which it fell", () => {
    const rejections = new RejectionCounts();
    rejections.feasible = 5;
    rejections.reject(slotOf("index"), 3);
    rejections.reject(slotOf("index"), 4);
    rejections.reject(slotOf("wire"), 1);
    rejections.reject(slotOf("surge"), 0);
    expect([rejections.walked, rejections.rejected]).toEqual([13, { wire: 1, index: 7 }]);
    expect(Object.keys(rejections.rejected)).toEqual(["wire", "index"]);
  });

  it("adds what others counted, and knows what it has grown by since it was copied", () => {
    const rejections = new RejectionCounts();
    rejections.reject(slotOf("index"), 3);
    const before = rejections.snapshot();
    const other = new RejectionCounts();
    other.reject(slotOf("surge"), 2);
    rejections.add(other.counts, 4);
    const grown = rejections.since(before);
    expect([grown.rejected, grown.feasible]).toEqual([{ surge: 2 }, 4]);
    expect([before.walked, rejections.walked]).toEqual([3, 9]);
  });

  it("has a slot for every limit, families before diameters", () => {
    expect(REJECTION_ORDER.slice(0, 3)).toEqual(["wire", "temperature", "turns"]);
    expect([slotOf("wire"), slotOf("temperature"), slotOf("turns")]).toEqual([0, 1, 2]);
  });
});
