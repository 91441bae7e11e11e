import type { CheckResult, ScatterFigures } from "../../../src/model.ts";
import { checkOf, type QuotedParts } from "../check/quoted.ts";

/** Nothing varies but what a test says. */
const still = { wireDiameter: "0 mm", coilDiameter: "0 mm", turns: "0", freeLength: "0 mm", modulus: "0 %" };

/** The key `service.scatter` with nothing varying but what is given. */
export function scatterKey(given: Readonly<Record<string, string>>): string {
  const keys = Object.entries({ ...still, ...given }).map(([key, text]) => `${key}: ${text}`);
  return `service: { scatter: { ${keys.join(", ")} } }`;
}

/** The check of the sound spring of `quoted.ts` with springs drawn about it. */
export function checkDrawn(given: Readonly<Record<string, string>>, parts: QuotedParts = {}): CheckResult {
  return checkOf({ ...parts, service: scatterKey(given) });
}

/** What springs drawn about that spring do. */
export function drawnAbout(given: Readonly<Record<string, string>>, parts: QuotedParts = {}): ScatterFigures {
  return checkDrawn(given, parts).design.scatter as ScatterFigures;
}
