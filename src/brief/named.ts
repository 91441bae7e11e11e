import { type Problem, ProblemError } from "../problem.ts";
import type { Listed, Section } from "./section.ts";

/** One of the finders of a `Lookup`. */
export type Find<Thing> = (name: string, from: string) => Thing;

/**
 * The catalog entry that a brief names, with the path that it stands at where that is a file of the user's own; undefined where
 * there is none. The problems of a name have no file of their own: they are noted where the brief names it.
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
    const placed = (problem: Problem): Problem =>
      problem.file === undefined ? { ...problem, file, line, key: section.pathOf(key) } : problem;
    problems.push(...error.problems.map(placed));
    return undefined;
  }
}
