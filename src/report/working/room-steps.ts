import type { Steps } from "./steps.ts";
import { briefSource, type Subject } from "./subject.ts";

/** The bore less its clearance, and the rod with its own. */
export function roomSteps(steps: Steps, { brief, asks }: Subject): void {
  const { bore, rod } = brief.envelope;
  steps.chapter("Bore and rod");
  if (bore !== undefined && asks.bore < Number.POSITIVE_INFINITY) {
    steps.given(["Bo", "boreDiameter", "bore"], "length", bore, briefSource(brief, "envelope.bore"));
    const free = clearance(steps, brief, "Bo");
    steps.derived(["Db", "freeBore", "bore less its clearance"], "length", `Bo${free(" - ")}`, "geometry", asks.bore);
  }
  if (rod !== undefined && asks.rod > 0) {
    steps.given(["Ro", "rodDiameter", "rod"], "length", rod, briefSource(brief, "envelope.rod"));
    const free = clearance(steps, brief, "Ro");
    steps.derived(["Dr", "freeRod", "rod with its clearance"], "length", `Ro${free(" + ")}`, "geometry", asks.rod);
  }
}

/** Puts in the clearance; what follows the diameter in an equation. */
function clearance(steps: Steps, brief: Subject["brief"], diameter: string): (sign: " + " | " - ") => string {
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
