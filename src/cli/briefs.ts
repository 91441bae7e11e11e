import { editBrief } from "../brief/edit.ts";
import { readBrief } from "../brief/read.ts";
import { type RankWord, rankingOf } from "../brief/sections/sweep.ts";
import { readText } from "../disk/files.ts";
import { omitUndefined } from "../document/omit-undefined.ts";
import type { Brief, Lookup, SweepOptions } from "../model.ts";
import { type Problem, ProblemError } from "../problem.ts";
import type { PageSource } from "../report/page/page-data.ts";

/** A brief, with the text that it was read from and the path of that. */
export interface BriefFile {
  readonly path: string;
  readonly text: string;
  readonly brief: Brief;
}

/**
 * All briefs, or the problems of all of them together.
 *
 * @param paths   as the person named them
 * @param lookup  finds what they name
 * @param rank    a ranking that was typed and takes the place of their own
 * @throws ProblemError
 */
export function readBriefs(paths: readonly string[], lookup: Lookup, rank?: readonly RankWord[]): readonly BriefFile[] {
  const problems: Problem[] = [];
  const files = paths.map((path) => {
    try {
      const text = readText(path);
      const brief = readBrief(text, path, lookup);
      return { path, text, brief: rank ? rankedBy(brief, rank) : brief };
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      for (const problem of error.problems) problems.push(problem);
      return undefined;
    }
  });
  if (!files.every((file) => file !== undefined)) throw new ProblemError(problems);
  return files;
}

/** The brief with the ranking that was typed, which is then no default. */
function rankedBy({ rank, yieldFirst, ...brief }: Brief, words: readonly RankWord[]): Brief {
  const ranking = rankingOf(words, brief.service.scatter !== undefined);
  if (!("rank" in ranking)) throw new ProblemError([{ ...ranking, key: "--rank" }]);
  return { ...brief, ...ranking, defaults: brief.defaults.filter(({ key }) => key !== "rank") };
}

/** The brief as a page carries it. A ranking that was typed is written into its text, for that is what the page shows. */
export function pageSource(
  { path, text }: BriefFile,
  { rank, top, each, nearest }: Pick<SweepOptions, "top" | "each" | "nearest"> & { readonly rank?: readonly string[] },
): PageSource {
  const file = path.replace(/^.*[/\\]/, "");
  return {
    text: rank ? editBrief(text, "rank", rank) : text,
    file,
    options: omitUndefined<PageSource["options"]>({ top, each, nearest }),
  };
}

/**
 * What an act over a brief gives. A problem that belongs to no file is about the brief's own, unless it is about an option.
 *
 * @param path  of the brief, as the person named it
 * @throws what the act throws
 */
export async function aboutFile<Result>(path: string, act: () => Result | Promise<Result>): Promise<Result> {
  try {
    return await act();
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    throw new ProblemError(
      error.problems.map((problem) => (problem.key.startsWith("--") ? problem : { file: path, ...problem })),
    );
  }
}
