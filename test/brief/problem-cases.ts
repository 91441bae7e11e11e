import { describe, expect, it } from "vitest";
import { briefText, lineOf, type Parts, problemsOf } from "./reading.ts";

/** What is wrong, where it is found, and what the message must say to help. */
export type ProblemCase = readonly [title: string, parts: Parts, code: string, key: string, fix: RegExp];

/** The load of points, each as it is written. */
export const points = (...list: string[]) => `load: { points: [${list.join(", ")}] }`;

/** The smallest sweep with more keys in it. */
export const sweepOf = (text: string) => `sweep: { wires: [iso-r20], materials: [astm-a228], ends: [squared-ground], ${text} }`;

/** A problem of a missing section stands at the top; any other on the line of its section. */
function lineFor(parts: Parts, code: string, key: string): number {
  const [part] = Object.keys(parts).filter((name) => key.startsWith(name)) as (keyof Parts)[];
  return part === undefined ? lineOf.rank : code === "missing" && parts[part] === "" ? 1 : lineOf[part];
}

/** Each case is the one problem of its brief. */
export function describeProblems(section: string, cases: readonly ProblemCase[]): void {
  describe(`in ${section}`, () => {
    it.each(cases)("%s is one problem, at its line, with the fix", (_title, parts, code, key, fix) => {
      const problems = problemsOf(briefText(parts));
      expect(problems.map((problem) => [problem.code, problem.key])).toEqual([[code, key]]);
      const [problem] = problems;
      expect(problem?.line).toBe(lineFor(parts, code, key));
      expect(problem?.file).toBe("test.yaml");
      expect(`${problem?.got}; ${problem?.want}`).toMatch(fix);
    });
  });
}
