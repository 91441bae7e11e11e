import type { Bound } from "../constrain/limits/bound.ts";
import { type Requirements, WOUND_INDEX } from "../constrain/requirements/requirements.ts";
import type { Brief, CheckEntry, ThresholdSource } from "../model.ts";

const WINDOWS: readonly CheckEntry["limit"][] = [
  "turns",
  "index",
  "solidLength",
  "freeLength",
  "outsideDiameter",
  "insideDiameter",
];

/**
 * Who set one bound of a limit: the brief in its author's words, the practice with its clause, the material's data, or
 * geometry.
 *
 * @param brief         a resolved brief of one material
 * @param requirements  its requirements
 * @param limit         name of the limit
 * @param bound         the bound
 * @param boundValue    of the bound for the spring that is judged, SI
 * @returns the source; does not throw
 */
export function thresholdSource(
  brief: Brief,
  requirements: Requirements,
  limit: CheckEntry["limit"],
  bound: Bound,
  boundValue: number,
): ThresholdSource {
  const { practice } = requirements;
  const [material] = brief.sweep.materials;
  if (bound.figure === "stressAtGreatestLoad") {
    const stated = material?.allowable !== undefined;
    return stated ? { from: "material", text: material.source } : { from: "practice", text: practice.allowable.source };
  }
  if (bound.figure === "wireDiameter" && practice.fatigue.kind === "endured") {
    return { from: "practice", text: practice.fatigue.strengths.source };
  }
  if (limit === "pitch") return { from: "geometry", text: "coils of the free spring must not overlap" };
  if (limit === "hotForce") return { from: "brief", key: "load", text: "force windows of the load, at service.temperature" };
  if (limit === "loadTolerance") return { from: "practice", key: "limits.loadTolerance", text: practice.tolerance.source };
  if (limit === "index" && (boundValue === WOUND_INDEX.min || boundValue === WOUND_INDEX.max)) {
    const inBrief = brief.asked.find(({ key, value }) => key.startsWith("limits.index") && value === boundValue);
    if (inBrief === undefined) return { from: "geometry", text: "nothing is wound beyond index 2 to 25" };
  }

  const keys = keysOf(limit, bound, requirements, boundValue);
  const otherEnd =
    WINDOWS.includes(limit) && !/bore|rod/.test(keys[0] as string) ? (bound.sense === "least" ? "max" : "min") : "";
  const matches = ({ key }: { readonly key: string }) =>
    keys.some((place) => key === place || (key.startsWith(place) && /[.[]/.test(key.charAt(place.length)))) &&
    (otherEnd === "" || !key.endsWith(`.${otherEnd}`));
  const asked = brief.asked.find(matches);
  if (limit === "rate" && asked?.key.startsWith("load.rate") !== true) {
    return { from: "brief", key: "load", text: "follows from the forces of the load" };
  }
  if (asked !== undefined) return { from: "brief", key: asked.key, text: asked.text };
  const taken = brief.defaults.find(matches);
  if (taken !== undefined) return { from: "practice", key: taken.key, text: taken.source };
  return { from: "geometry", text: "coils must not touch in work" };
}

/** Where in a brief the bound would stand. */
function keysOf(limit: CheckEntry["limit"], bound: Bound, requirements: Requirements, boundValue: number): readonly string[] {
  if (bound.figure === "outsideDiameterAtSolid") return ["envelope.bore"];
  if (limit === "insideDiameter" && bound.sense === "least" && requirements.rod > 0 && boundValue === requirements.rod)
    return ["envelope.rod"];
  if (limit === "rate") return ["load.rate"];
  return [`limits.${limit}`, `envelope.${limit}`];
}
