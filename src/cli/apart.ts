import { Worker } from "node:worker_threads";
import { walkerThread } from "../files.ts";
import type { Brief, NestedResult, RelaxResult, SweepOptions } from "../model.ts";
import { ProblemError } from "../problem.ts";
import { progressLine } from "./progress.ts";
import { unlessStopped } from "./stop.ts";
import { answered, Stopped, unlessAborted } from "./threads.ts";

/** Acts that hand out no errands: what each takes, and what it gives. */
interface Acts {
  readonly relax: { readonly takes: { readonly brief: Brief }; readonly gives: RelaxResult };
  readonly nested: {
    readonly takes: { readonly brief: Brief; readonly options: Pick<SweepOptions, "top"> };
    readonly gives: NestedResult;
  };
}

export type ActName = keyof Acts;

/** An act as another thread is asked for it. */
export type ActOrder = { readonly [Name in ActName]: { readonly act: Name } & Acts[Name]["takes"] }[ActName];

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
    const worker = new Worker(walkerThread());
    const began = performance.now();
    const progress = () => ({ share: null, walked: 0, seconds: (performance.now() - began) / 1000 });
    const over = progressLine(takes.brief)(work, progress);
    try {
      const answer = await unlessAborted(answered(worker, { act, ...takes } as ActOrder), signal);
      if ("problems" in answer) throw new ProblemError(answer.problems);
      if ("fault" in answer) throw new Error(answer.fault);
      return answer.found as Acts[Name]["gives"];
    } catch (error) {
      throw error === signal ? new Stopped(work, progress()) : error;
    } finally {
      over();
      await worker.terminate();
    }
  });
}
