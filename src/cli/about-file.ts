import { ProblemError } from "../problem.ts";

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
