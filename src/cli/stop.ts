import { printError } from "../files.ts";
import type { Brief, SweepOptions, SweepResult } from "../model.ts";
import { oneLine } from "../problem.ts";
import { shareWords } from "../report/funnel.ts";
import { sweepSteps } from "../sweep.ts";
import { endBy } from "../whole-file.ts";
import { countedIn, largeWords, progressLine, workWords } from "./progress.ts";
import { Stopped, type Threads } from "./threads.ts";

/** Exit status where Ctrl-C stopped the work, as shells have it: 128 and the number of the signal. */
export const INTERRUPTED = 130;

/**
 * Sweeps a brief, with a line of progress where it takes long.
 *
 * @returns null where it was stopped
 * @throws ProblemError as the sweep, or `threadDied`
 */
export function sweptUnlessStopped(threads: Threads, brief: Brief, options: SweepOptions): Promise<SweepResult | null> {
  return unlessStopped(brief, (signal) => threads.through(brief, sweepSteps(brief, options), progressLine(brief), signal));
}

/**
 * Does what takes long over a brief. Ctrl-C stops it and says how far it got; a second one ends the program at once.
 *
 * @param act  throws `Stopped` where the signal comes
 * @returns null where it was stopped
 */
export async function unlessStopped<Result>(brief: Brief, act: (signal: AbortSignal) => Promise<Result>): Promise<Result | null> {
  const stop = new AbortController();
  const abort = () => (stop.signal.aborted ? endBy("SIGINT") : stop.abort());
  process.on("SIGINT", abort);
  try {
    return await act(stop.signal);
  } catch (error) {
    if (!(error instanceof Stopped)) throw error;
    const { work, progress } = error;
    const { share, walked, seconds } = progress;
    const after = `after ${seconds.toFixed(1)} s`;
    const verb = work.kind === "drawing" ? "drawn" : "counted";
    const far = share === null ? after : `${shareWords(share)} done ${after}, ${largeWords(walked)} ${countedIn(work)} ${verb}`;
    const left = work.kind === "survivors" ? "no file of them was kept" : "nothing of it was written";
    await printError(`${oneLine(`stopped: ${brief.title}, ${workWords(work)}, ${far}; ${left}`)}\n`);
    return null;
  } finally {
    process.off("SIGINT", abort);
  }
}
