import { printError } from "../files.ts";
import type { Brief, SweepOptions, SweepResult } from "../model.ts";
import { oneLine } from "../problem.ts";
import { shareWords } from "../report/funnel.ts";
import { sweepSteps } from "../sweep.ts";
import { largeWords, progressLine, workWords } from "./progress.ts";
import { Stopped, type Threads } from "./threads.ts";

/** Exit status where Ctrl-C stopped the work, as shells have it: 128 and the number of the signal. */
export const INTERRUPTED = 130;

/**
 * Sweeps a brief, with a line of progress where it takes long. Ctrl-C stops it and says how far it got; a second one ends the
 * program at once.
 *
 * @returns null where it was stopped
 * @throws ProblemError as the sweep, or `threadDied`
 */
export async function sweptUnlessStopped(threads: Threads, brief: Brief, options: SweepOptions): Promise<SweepResult | null> {
  const stop = new AbortController();
  const abort = () => stop.abort();
  process.once("SIGINT", abort);
  try {
    return await threads.through(brief, sweepSteps(brief, options), progressLine(brief), stop.signal);
  } catch (error) {
    if (!(error instanceof Stopped)) throw error;
    const { share, walked, seconds } = error.progress;
    const far = `${shareWords(share)} done after ${seconds.toFixed(1)} s, ${largeWords(walked)} candidates counted`;
    await printError(`${oneLine(`stopped: ${brief.title}, ${workWords(error.errand)}, ${far}; nothing of it was written`)}\n`);
    return null;
  } finally {
    process.off("SIGINT", abort);
  }
}
