import type { CautionName, ModuliRow, StrengthFit, StrengthRows } from "../../model.ts";
import { show } from "../../units/show.ts";
import { cautionWords } from "../text/labels.ts";
import { kilograms, massFactor, type Steps, times } from "./steps.ts";
import { briefSource, type WorkedSpring } from "./worked-spring.ts";

/** What a strength that was not read in print is told by. */
const NOT_READ: readonly CautionName[] = ["strengthFromMemory", "strengthInferred"];

const POWER_LAW = "power law, Shigley eq. 10-14";

/** The wire and what its material is like in this size: strength read from its table or fit, moduli, density. */
export function materialSteps(steps: Steps, worked: WorkedSpring): void {
  const { wire, material, given } = worked;
  steps.chapter("Wire and material");
  const source = given === undefined ? `chosen by the walk: wire ${wire.label} of ${wire.series}` : "brief, design.wire";
  steps.given(["d", "wireDiameter", "wire diameter"], "length", wire.diameter, source);
  strengthSteps(steps, worked);
  for (const caution of NOT_READ) if (worked.design.cautions.includes(caution)) steps.note(cautionWords[caution]);
  moduliSteps(steps, material.moduli, worked);
  steps.given(["ρ", "density", "density"], "density", material.density, material.source);
  allowableSteps(steps, worked);
}

function strengthSteps(steps: Steps, { material, brief, candidate }: WorkedSpring): void {
  const { minimum, fit, constant } = material.strength;
  const strength = ["Rm", "tensileStrength", "tensile strength"] as const;
  if (brief.service.strength === "minimum" && minimum) {
    steps.table(
      "strengthRows",
      [
        ["up to", "length"],
        ["strength", "stress"],
      ],
      minimum.rows.map((row) => [row.diameter, row.strength]),
    );
    if (minimum.between === "interpolate")
      betweenRows(steps, minimum, candidate.wireDiameter, material.source, candidate.tensileStrength);
    else {
      const row = minimum.rows.find(({ diameter }) => candidate.wireDiameter <= diameter * (1 + 1e-9)) ?? minimum.rows.at(-1);
      const size = show(row?.diameter ?? Number.NaN, "length", steps.units);
      const reading = { table: "strengthRows", column: 1, by: "d", row: "atOrAbove" } as const;
      steps.given(strength, "stress", candidate.tensileStrength, `row up to ${size}; ${material.source}`, reading);
    }
  } else if (fit) {
    fitted(steps, fit, candidate.wireDiameter, material.source, candidate.tensileStrength);
  } else if (constant) {
    steps.given(strength, "stress", constant.value, `one strength for all sizes; ${material.source}`);
  }
}

/** Both rows that enclose the size; at the first row's own size the first two. */
function betweenRows(steps: Steps, { rows }: StrengthRows, wireDiameter: number, source: string, engine: number): void {
  const found = rows.findIndex(({ diameter }) => wireDiameter <= diameter * (1 + 1e-9));
  const upper = Math.max(1, found < 0 ? rows.length - 1 : found);
  const [row1, row2] = [rows[upper - 1], rows[upper]] as [StrengthRows["rows"][number], StrengthRows["rows"][number]];
  const at = (column: number, row: "lower" | "upper") => ({ table: "strengthRows", column, by: "d", row }) as const;
  steps.given(["d1", "rowBelowDiameter", "diameter of the row below"], "length", row1.diameter, source, at(0, "lower"));
  steps.given(["R1", "rowBelowStrength", "its strength"], "stress", row1.strength, source, at(1, "lower"));
  steps.given(["d2", "rowAboveDiameter", "diameter of the row at or above"], "length", row2.diameter, source, at(0, "upper"));
  steps.given(["R2", "rowAboveStrength", "its strength"], "stress", row2.strength, source, at(1, "upper"));
  steps.derived(
    ["Rm", "tensileStrength", "tensile strength"],
    "stress",
    "R1 + (R2 - R1) * min(1, log(d / d1) / log(d2 / d1))",
    "between rows on the logarithm of the diameter: common practice",
    engine,
  );
}

function fitted(steps: Steps, pieces: readonly StrengthFit[], wireDiameter: number, source: string, engine: number): void {
  const piece = pieces.find(({ diameter }) => wireDiameter <= diameter.max * (1 + 1e-9)) ?? (pieces.at(-1) as StrengthFit);
  const heads = [
    ["up to", "length"],
    ["strength", "stress"],
    ["at", "length"],
    ["exponent", "number"],
  ] as const;
  steps.table(
    "strengthFit",
    heads,
    pieces.map(({ diameter, value, at, exponent }) => [diameter.max, value, at, exponent]),
  );
  const read = (column: number) => ({ table: "strengthFit", column, by: "d", row: "atOrAbove" }) as const;
  steps.given(["A", "fitStrength", "strength of the fit at its reference"], "stress", piece.value, source, read(1));
  steps.given(["dr", "fitDiameter", "reference diameter of the fit"], "length", piece.at, source, read(2));
  steps.given(["x", "fitExponent", "exponent of the fit"], "number", piece.exponent, source, read(3));
  steps.derived(["Rm", "tensileStrength", "tensile strength"], "stress", "A / (d / dr)^x", POWER_LAW, engine);
}

function moduliSteps(steps: Steps, rows: readonly ModuliRow[], { material, candidate }: WorkedSpring): void {
  const only = rows.length === 1;
  if (!only) {
    const heads = [
      ["up to", "length"],
      ["Young's modulus", "stress"],
      ["shear modulus", "stress"],
    ] as const;
    steps.table(
      "moduli",
      heads,
      rows.map((row) => [row.upTo ?? Number.POSITIVE_INFINITY, row.youngsModulus, row.shearModulus]),
    );
  }
  const read = (column: number) => (only ? undefined : ({ table: "moduli", column, by: "d", row: "atOrAbove" } as const));
  const { youngsModulus, shearModulus } = candidate;
  steps.given(["E", "youngsModulus", "Young's modulus"], "stress", youngsModulus, material.source, read(1));
  steps.given(["G", "shearModulus", "shear modulus"], "stress", shearModulus, material.source, read(2));
}

function allowableSteps(steps: Steps, { material, candidate, requirements, brief }: WorkedSpring): void {
  const { practice, setRemoved } = requirements;
  const stated = material.allowable !== undefined;
  const source = stated ? material.source : `${practice.allowable.source}; ${material.class}`;
  const label = `share of strength allowed in torsion, ${setRemoved ? "set removed" : "as wound"} (${briefSource(brief, "service.set")})`;
  steps.given(["a", "allowableShare", label], "number", candidate.allowableFraction, source);
  steps.derived(["τall", "allowableStress", "allowable shear stress"], "stress", "a * Rm", source, candidate.allowableStress);
}

const OPERATIONS = [
  ["grind", "og", "grindingCost", "grinding"],
  ["set", "os", "settingCost", "removing set"],
  ["peen", "op", "peeningCost", "shot peening"],
  ["relieve", "or", "relievingCost", "stress relief"],
] as const;

/** Length of wire, mass and the cost proxy. */
export function costSteps(steps: Steps, { design, candidate, wire, material, brief }: WorkedSpring): void {
  const { units } = steps;
  steps.chapter("Mass and cost proxy");
  steps.derived(["l", "wireLength", "wire length"], "length", "pi * D * Nt", "Shigley section 10-5", design.wireLength);
  const mass = `${times(massFactor(units))}ρ * pi / 4 * d^2 * l`;
  steps.derived(["m", "mass", "mass"], "mass", mass, "Shigley eq. 10-22", design.mass);
  const priced = wire.price !== undefined;
  const source = priced ? `price in ${wire.series}` : material.source;
  const label = priced ? "price for each kilogram" : "cost for each kilogram relative to hard-drawn carbon wire";
  steps.given(["c", "costPerKilogram", label], "number", candidate.costPerMass, source);
  const terms = OPERATIONS.flatMap(([operation, symbol, name, label]) => {
    const weight = design.costParts[operation];
    if (weight === 0) return [];
    const from = brief.cost[operation] === undefined ? material.source : `brief, cost.${operation}`;
    steps.given([symbol, name, `weight of ${label}`], "number", weight, from);
    return [` + ${symbol}`];
  });
  const cost = `${times(kilograms(units))}m * c${terms.join("")}`;
  steps.derived(
    ["cp", "relativeCost", priced ? "cost at the price of the wire" : "cost proxy, which is no price"],
    "number",
    cost,
    "mass times cost, and operations",
    design.relativeCost,
  );
}
