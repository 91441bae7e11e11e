import { Worker } from "node:worker_threads";
import { printError, workerEntry } from "../../disk/files.ts";
import { endBy } from "../../disk/whole-file.ts";
import type { Brief, SweepOptions, SweepResult } from "../../model.ts";
import { oneLine, ProblemError } from "../../problem.ts";
import { percentText } from "../../report/text/rejections.ts";
import { sweepSteps } from "../../studies/sweep.ts";
import type { ActName, ActRequest, Acts } from "./chunk-queue.ts";
import { countedIn, largeWords, progressLine, workWords } from "./progress.ts";
import { replyFrom, Stopped, type Threads, unlessAborted } from "./threads.ts";

/** Exit status where Ctrl-C stopped the work, as shells have it: 128 and the number of the signal. */
export const INTERRUPTED = 130;

/**
 * Sweeps a brief, with a line of progress where it takes long.
 *
 * @returns null where it was stopped
 * @throws ProblemError as the sweep, or `threadDied`
 */
export function sweptUnlessStopped(threads: Threads, brief: Brief, options: SweepOptions): Promise<SweepResult | null> {
  return unlessStopped(brief, (signal) => threads.runPlan(brief, sweepSteps(brief, options), progressLine(brief), signal));
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
    const { fraction, counted, seconds } = progress;
    const after = `after ${seconds.toFixed(1)} s`;
    const verb = work.kind === "sampling" ? "drawn" : "counted";
    const far =
      fraction === null ? after : `${percentText(fraction)} done ${after}, ${largeWords(counted)} ${countedIn(work)} ${verb}`;
    const left = work.kind === "feasibleDesigns" ? "no file of them was kept" : "nothing of it was written";
    await printError(`${oneLine(`stopped: ${brief.title}, ${workWords(work)}, ${far}; ${left}`)}\n`);
    return null;
  } finally {
    process.off("SIGINT", abort);
  }
}

/**
 * Does an act in a thread of its own, from end to end, so that this one hears Ctrl-C and shows that it is going on.
 *
 * @returns null where it was stopped
 * @throws ProblemError as the act does, or `threadDied`
 */
export function actedUnlessStopped<Name extends ActName>(
  act: Name,
  takes: Acts[Name]["takes"],
): Promise<Acts[Name]["gives"] | null> {
  return unlessStopped(takes.brief, async (signal) => {
    const work = { kind: act };
    const worker = new Worker(workerEntry());
    const began = performance.now();
    const progress = () => ({ fraction: null, counted: 0, seconds: (performance.now() - began) / 1000 });
    const over = progressLine(takes.brief)(work, progress);
    try {
      const reply = await unlessAborted(replyFrom(worker, { act, ...takes } as ActRequest), signal);
      if ("problems" in reply) throw new ProblemError(reply.problems);
      if ("fault" in reply) throw new Error(reply.fault);
      return reply.result as Acts[Name]["gives"];
    } catch (error) {
      throw error === signal ? new Stopped(work, progress()) : error;
    } finally {
      over();
      await worker.terminate();
    }
  });
}
