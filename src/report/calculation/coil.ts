import type { Steps } from "./steps.ts";
import { briefSource, factorSteps, type WorkedSpring } from "./worked-spring.ts";

const RATE_SOURCE = "Shigley eq. 10-9; EN 13906-1";
const END_TABLE = "Shigley Table 10-1; Machinery's Handbook, 31st ed., springs, Table 3";

/** Diameters, index, stress factors, turns, solid length and rate. */
export function coilSteps(steps: Steps, worked: WorkedSpring): void {
  const { candidate, given } = worked;
  steps.chapter("Coil");
  const source = given === undefined ? "chosen by the walk" : "brief, design";
  steps.given(["D", "meanDiameter", "mean diameter"], "length", candidate.meanDiameter, source);
  steps.derived(["De", "outsideDiameter", "outside diameter"], "length", "D + d", "geometry", candidate.outsideDiameter);
  steps.derived(["Di", "insideDiameter", "inside diameter"], "length", "D - d", "geometry", candidate.insideDiameter);
  steps.derived(["C", "springIndex", "index"], "number", "D / d", "Shigley section 10-1", candidate.index);
  factorSteps(steps, worked);
  if (worked.requirements.turnsAny) turnsFromRate(steps, worked);
  else rateFromTurns(steps, worked);
  solidSteps(steps, worked);
}

function rateFromTurns(steps: Steps, { candidate, ends, given }: WorkedSpring): void {
  const source = given === undefined ? "chosen by the walk" : "brief, design";
  steps.given(["Nt", "totalTurns", "total turns"], "number", candidate.totalTurns, source);
  deadTurns(steps, ends);
  steps.derived(["Na", "activeTurns", "active turns"], "number", "Nt - Ne", END_TABLE, candidate.activeTurns);
  steps.derived(["k", "springRate", "rate"], "rate", "G * d^4 / (8 * D^3 * Na)", RATE_SOURCE, candidate.rate);
}

function turnsFromRate(steps: Steps, worked: WorkedSpring): void {
  const { candidate, ends } = worked;
  askedRate(steps, worked);
  steps.derived(
    ["Na", "activeTurns", "active turns"],
    "number",
    "G * d^4 / (8 * D^3 * k)",
    `${RATE_SOURCE}, solved for Na`,
    candidate.activeTurns,
  );
  deadTurns(steps, ends);
  steps.derived(["Nt", "totalTurns", "total turns"], "number", "Na + Ne", END_TABLE, candidate.totalTurns);
}

function deadTurns(steps: Steps, { name, deadTurns }: WorkedSpring["ends"]): void {
  steps.given(["Ne", "deadTurns", `turns that do not deflect, ${name} ends`], "number", deadTurns, END_TABLE);
}

/** The one rate that the load fixes. */
function askedRate(steps: Steps, { brief, candidate }: WorkedSpring): void {
  const { load } = brief;
  const called = ["k", "springRate", "rate"] as const;
  switch (load.kind) {
    case "forceAtDeflection":
      steps.given(["Fo", "askedForce", "force asked"], "force", load.force.nominal as number, briefSource(brief, "load.force"));
      steps.given(["y", "workingDeflection", "its deflection"], "length", load.deflection, briefSource(brief, "load.deflection"));
      steps.derived(called, "rate", "Fo / y", "rate that the load asks", candidate.rate);
      return;
    case "points": {
      for (const [i, { name, length, force }] of load.points.entries()) {
        const key = `load.points[${i + 1}]`;
        steps.given(
          [`L${i + 1}`, `lengthAtPoint${i + 1}`, `length, ${name}`],
          "length",
          length,
          briefSource(brief, `${key}.length`),
        );
        const called = [`Fo${i + 1}`, `askedForce${i + 1}`, `force asked, ${name}`] as const;
        steps.given(called, "force", force.nominal as number, briefSource(brief, `${key}.force`));
      }
      steps.derived(called, "rate", "(Fo2 - Fo1) / (L1 - L2)", "rate that the two points ask", candidate.rate);
      return;
    }
    default:
      steps.given(called, "rate", load.rate.nominal as number, briefSource(brief, "load.rate"));
      return;
  }
}

function solidSteps(steps: Steps, { requirements, ends, candidate, material, design }: WorkedSpring): void {
  const { practice } = requirements;
  const solid = ["Ls", "solidLength", "solid length"] as const;
  if (practice.name === "handbook") {
    steps.given(["e", "solidExtra", `wires beyond one a turn, ${ends.name} ends`], "number", ends.solidExtra, END_TABLE);
    steps.derived(solid, "length", "(Nt + e) * d", END_TABLE, candidate.solidLength);
    return;
  }
  const clause = "EN 13906-1 clause 9.10, from memory";
  steps.given(["e", "solidExtra", `wires beyond one a turn, ${ends.name} ends`], "number", ends.ground ? 0 : 1.5, clause);
  wireDeviation(steps, { material, design });
  steps.derived(solid, "length", "(Nt + e) * (d + td)", `${clause}: the largest wire`, candidate.solidLength);
}

/** Plus-minus on the wire diameter, where somebody gives one. */
export function wireDeviation(steps: Steps, { material, design }: Pick<WorkedSpring, "material" | "design">): void {
  const { wireDiameter, wireSource } = design.tolerance;
  if (wireDiameter === null || wireSource === null || steps.has("td")) return;
  const called = ["td", "wireDeviation", "plus-minus on the wire diameter"] as const;
  const rows = material.wireTolerance ?? [];
  if (wireSource !== material.source) {
    steps.given(called, "length", wireDiameter, `its row in ${wireSource}`);
    return;
  }
  steps.table(
    "wireTolerance",
    [
      ["up to", "length"],
      ["plus-minus", "length"],
    ],
    rows.map(({ upTo, plusMinus }) => [upTo, plusMinus]),
  );
  const reading = { table: "wireTolerance", column: 1, by: "d", row: "atOrAbove" } as const;
  steps.given(called, "length", wireDiameter, wireSource, reading);
}

/** The bore less its clearance, and the rod with its own. */
export function roomSteps(steps: Steps, { brief, requirements }: WorkedSpring): void {
  const { bore, rod } = brief.envelope;
  steps.chapter("Bore and rod");
  if (bore !== undefined && requirements.bore < Number.POSITIVE_INFINITY) {
    steps.given(["Bo", "boreDiameter", "bore"], "length", bore, briefSource(brief, "envelope.bore"));
    const free = clearance(steps, brief, "Bo");
    steps.derived(["Db", "freeBore", "bore less its clearance"], "length", `Bo${free(" - ")}`, "geometry", requirements.bore);
  }
  if (rod !== undefined && requirements.rod > 0) {
    steps.given(["Ro", "rodDiameter", "rod"], "length", rod, briefSource(brief, "envelope.rod"));
    const free = clearance(steps, brief, "Ro");
    steps.derived(["Dr", "freeRod", "rod with its clearance"], "length", `Ro${free(" + ")}`, "geometry", requirements.rod);
  }
}

/** Puts in the clearance; what follows the diameter in an equation. */
function clearance(steps: Steps, brief: WorkedSpring["brief"], diameter: string): (sign: " + " | " - ") => string {
  const asked = brief.envelope.clearance;
  if (asked === undefined) return () => "";
  const source = briefSource(brief, "envelope.clearance");
  if ("length" in asked) {
    steps.given(["cl", "clearance", "clearance on the diameter"], "length", asked.length, source);
    return (sign) => `${sign}cl`;
  }
  steps.given(["cs", "clearanceShare", "clearance as a share of the diameter"], "number", asked.share, source);
  return (sign) => `${sign}cs * ${diameter}`;
}
