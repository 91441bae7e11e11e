import { type Problem, ProblemError, quoted } from "../problem.ts";
import type { Listed, Section } from "./section.ts";

/** One of the finders of a `Lookup`. */
export type Find<Thing> = (name: string, from: string) => Thing;

/**
 * The catalog entry that a brief names, with the path that it stands at where that is a file of the user's own; undefined where
 * there is none. A file that is not there, and problems of a name, which have no file, are noted where the brief names it.
 *
 * @param section  where the name stands
 * @param key      its key there
 * @param listed   the name with its line
 * @param find     looks it up
 */
export function findNamed<Thing extends { readonly name: string }>(
  section: Section,
  key: string,
  { name, line }: Listed,
  find: Find<Thing>,
): Thing | undefined {
  const { file, problems } = section.reading;
  try {
    const found = find(name, file);
    return found.name === name ? found : { ...found, path: name };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    const here = { file, line, key: section.pathOf(key) };
    const placed = (problem: Problem): Problem => {
      if (problem.code === "missing") return { ...problem, ...here, got: `there is no file ${quoted(problem.file ?? "")}` };
      return problem.file === undefined ? { ...problem, ...here } : problem;
    };
    for (const problem of error.problems) problems.push(placed(problem));
    return undefined;
  }
}
