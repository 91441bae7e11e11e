import { forceDeviationBase, turnsInfluence } from "../../mechanics/tolerance.ts";
import { GRADE_FACTOR } from "../../practice/en-tolerances.ts";
import { wireDeviation } from "./coil.ts";
import { millimetres, newtons, type Steps, times } from "./steps.ts";
import type { WorkedSpring } from "./worked-spring.ts";

const MEMORY = "EN 15800, from memory";
const BEYOND = "beyond the practice's tables";

/** What the maker may miss by at the grade: dimensions, forces, worst cases, room left. */
export function toleranceSteps(steps: Steps, worked: WorkedSpring): void {
  const { design, requirements } = worked;
  const { tolerance } = design;
  const { source } = requirements.practice.tolerance;
  steps.chapter(`Tolerances, grade ${tolerance.grade}`);
  wireDeviation(steps, worked);
  if (tolerance.coilDiameter === null) steps.note(`Plus-minus on the coil diameter: ${BEYOND}.`);
  else {
    const label = "plus-minus on the coil diameter, read in its band";
    steps.given(["tD", "coilDeviation", label], "length", tolerance.coilDiameter, source);
  }
  if (tolerance.freeLength === null) steps.note(`Plus-minus on the free length: ${BEYOND}.`);
  else if (requirements.practice.name === "handbook") lengthFromTable(steps, worked, tolerance.freeLength);
  else lengthFromFormula(steps, worked, tolerance.freeLength);
  forceSteps(steps, worked);
  worstCases(steps, worked);
  rooms(steps, worked);
}

/** The table gives a plus-minus for each unit of length, in thousandths. */
function lengthFromTable(steps: Steps, { candidate, ends, requirements }: WorkedSpring, engine: number): void {
  const { source } = requirements.practice.tolerance;
  const halfInch = 0.0127;
  const factor = ends.ground ? 1 : 1.7;
  const perLength = Math.round((1000 * engine) / (Math.max(candidate.freeLength, halfInch) * factor)) / 1000;
  const label = "plus-minus for each unit of free length, read in its band";
  steps.given(["tp", "lengthDeviationShare", label], "number", perLength, source);
  steps.given(["Lt", "tabledLength", "least length that the table is read with"], "length", halfInch, source);
  steps.given(["tf", "endsFactor", `factor for ${ends.name} ends`], "number", factor, source);
  const called = ["tL", "lengthDeviation", "plus-minus on the free length"] as const;
  steps.derived(called, "length", "tp * max(L0, Lt) * tf", source, engine);
}

function lengthFromFormula(steps: Steps, { candidate, design }: WorkedSpring, engine: number): void {
  const { grade } = design.tolerance;
  const { wireDiameter, meanDiameter, activeTurns } = candidate;
  const mm = times(millimetres(steps.units));
  const tenth = "3.781 * (C / 10)^2 - 0.84 * (C / 10)^3 - 4.244 * C / 10 + 2.274";
  const force = newtons(steps.units) === 1 ? "" : ` / ${newtons(steps.units)}`;
  const base = `65.92 * (${mm}d)^3.3 / (${mm}D)^1.6 * (${tenth})${force}`;
  const sized = ["aF", "sizeInfluence", "influence of the size"] as const;
  steps.derived(sized, "force", base, MEMORY, forceDeviationBase(wireDiameter, meanDiameter));
  const turned = ["kF", "turnsInfluence", "influence of the turns"] as const;
  steps.derived(turned, "number", "8 / (5 * Na) + 0.803 - 1 / (3 * Na^2)", MEMORY, turnsInfluence(activeTurns));
  const quality = GRADE_FACTOR[grade === "commercial" ? 2 : grade];
  steps.given(["Q", "gradeFactor", `factor of grade ${grade}`], "number", quality, MEMORY);
  const called = ["tL", "lengthDeviation", "plus-minus on the free length"] as const;
  steps.derived(called, "length", "aF * kF * Q / k", MEMORY, engine);
}

function forceSteps(steps: Steps, { design, requirements }: WorkedSpring): void {
  if (!steps.has("tL")) return;
  const isHandbook = requirements.practice.name === "handbook";
  for (const [i, { name, force }] of design.tolerance.points.entries()) {
    // At no deflection a share of the force says nothing.
    if (force === null || !Number.isFinite(force)) continue;
    const n = i + 1;
    const called = [`tF${n}`, `forceDeviationAtPoint${n}`, `plus-minus on the force, ${name}`] as const;
    const expression = isHandbook ? `max(0.05, tL / s${n} + 0.02) * F${n}` : `(aF * kF + 0.015 * F${n}) * Q`;
    steps.derived(called, "force", expression, isHandbook ? "load tolerance by a rule from memory" : MEMORY, force);
  }
}

/** Every dimension and the modulus at the wrong end at once. */
function worstCases(steps: Steps, { design, requirements }: WorkedSpring): void {
  if (!["td", "tD", "tL"].every((symbol) => steps.has(symbol))) return;
  const { turns, shearModulus } = requirements.practice.tolerance;
  steps.given(["tN", "turnsDeviation", "plus-minus on the turns"], "number", turns.value, turns.source);
  steps.given(
    ["tG", "modulusDeviation", "plus-minus on the shear modulus, as a share"],
    "number",
    shearModulus.value,
    shearModulus.source,
  );
  const source = "worst case, not a likely spread";
  const least = "G * (1 - tG) * (d - td)^4 / (8 * (D + tD)^3 * (Na + tN))";
  const greatest = "G * (1 + tG) * (d + td)^4 / (8 * (D - tD)^3 * (Na - tN))";
  steps.derived(["kl", "leastRate", "least rate"], "rate", least, source);
  steps.derived(["ku", "greatestRate", "greatest rate"], "rate", greatest, source);
  for (const [i, { name, leastForce, greatestForce }] of design.tolerance.points.entries()) {
    const n = i + 1;
    if (leastForce === null || greatestForce === null) continue;
    steps.derived(
      [`Fl${n}`, `worstLeastForce${n}`, `least force, ${name}`],
      "force",
      `max(0, kl * (s${n} - tL))`,
      source,
      leastForce,
    );
    const called = [`Fu${n}`, `worstGreatestForce${n}`, `greatest force, ${name}`] as const;
    steps.derived(called, "force", `max(0, ku * (s${n} + tL))`, source, greatestForce);
  }
}

function rooms(steps: Steps, { design }: WorkedSpring): void {
  const { boreRoom, rodRoom } = design.tolerance;
  const bore = ["rb", "boreRoom", "room in the bore, solid at the largest diameter"] as const;
  const rod = ["rr", "rodRoom", "room over the rod at the smallest diameter"] as const;
  if (typeof boreRoom === "number") steps.derived(bore, "length", "Db - Ds - tD", "geometry", boreRoom);
  if (typeof rodRoom === "number") steps.derived(rod, "length", "Di - tD - Dr", "geometry", rodRoom);
}
