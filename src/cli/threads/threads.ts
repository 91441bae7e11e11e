import { Worker } from "node:worker_threads";
import { walkerThread } from "../../disk/files.ts";
import type { Brief } from "../../model.ts";
import { ProblemError } from "../../problem.ts";
import { walkerOf } from "../../search/task-runner.ts";
import type { Drawing, Errand, Steps, Walker } from "../../search/tasks.ts";
import { type ActName, type ActOrder, type Answer, type Order, Share, Stumble, stumbleOf } from "./chunk-queue.ts";

/**
 * When more threads are worth starting: one takes about 60 ms to come up, and most walks are done by then. Time of the processor
 * counts, so that a short walk on a busy machine is not taken for a long one.
 */
export interface Patience {
  /** Walk so long alone, ms. */
  readonly alone: number;
  /** Start them where more than this seems to be left, ms. */
  readonly left: number;
}

const PATIENCE: Patience = { alone: 100, left: 200 };

/** What takes long and may be stopped: an errand, handing on every spring that fits, drawing springs, or an act as a whole. */
export type Work = Errand | { readonly kind: "survivors" | "drawing" | ActName };

/** Longest that signals and timers wait for the walk, where a piece of it is not longer, ms. */
const TURN = 50;

/** How far a walk has got. */
export interface Progress {
  /** Pieces done as a share of all; null where that is not known. */
  readonly share: number | null;
  /** Candidates counted, or springs drawn. */
  readonly walked: number;
  /** Since the walk began, s. */
  readonly seconds: number;
}

/** Thrown where a walk is stopped from outside. */
export class Stopped extends Error {
  readonly work: Work;
  readonly progress: Progress;

  constructor(work: Work, progress: Progress) {
    super("stopped");
    this.work = work;
    this.progress = progress;
  }
}

/** Told of a walk as it begins, with a look at how far it has got; what it returns is called when the walk is over. */
export type Watch = (work: Work, progress: () => Progress) => () => void;

/**
 * Walks the errands of acts: the calling thread walks, and where a walk is long other threads share it. What is found is the same
 * for any number of threads.
 */
export class Threads {
  private readonly most: number;
  private readonly patience: Patience;
  private readonly entry: string;
  private readonly others: Worker[] = [];

  /**
   * @param most      threads in all, at least 1: the calling one is one of them
   * @param patience  when to start the others
   * @param entry     the script that the others run
   */
  constructor(most: number, patience = PATIENCE, entry = walkerThread()) {
    this.most = most;
    this.patience = patience;
    this.entry = entry;
  }

  /**
   * Go through the steps of an act, each errand walked.
   *
   * @param watch   is told of each walk
   * @param signal  stops the walk
   * @throws ProblemError as the walk does, or `threadDied`; Stopped where the signal came
   */
  async through<Result>(brief: Brief, steps: Steps<Result>, watch: Watch, signal: AbortSignal): Promise<Result> {
    let step = steps.next();
    while (!step.done) {
      const { value } = step;
      step =
        value.kind === "drawing"
          ? await drawn(steps, value, watch, signal)
          : steps.next(await this.walked(brief, value, watch, signal));
    }
    return step.value;
  }

  /** End the other threads. */
  async close(): Promise<void> {
    await Promise.all(this.others.splice(0).map((worker) => worker.terminate()));
  }

  private async walked(brief: Brief, errand: Errand, watch: Watch, signal: AbortSignal): Promise<Walker> {
    const walker = walkerOf(brief, errand);
    const share = new Share(walker.strips, this.most);
    const begun = process.cpuUsage();
    const began = performance.now();
    const progress = () => ({
      share: share.done / Math.max(1, share.pieces),
      walked: share.walked,
      seconds: (performance.now() - began) / 1000,
    });
    const over = watch(errand, progress);
    try {
      const orders: Promise<Answer[]>[] = [];
      const order = () => {
        if (orders.length === 0 && this.worthStarting(share, begun)) orders.push(this.ordered(brief, errand, share));
      };
      const stumbles = await walkedAlone(walker, share, order, signal);
      for (const answer of (await unlessAborted(Promise.all(orders), signal)).flat()) {
        if ("found" in answer) walker.absorb(answer.found);
        else stumbles.push(stumbleOf(answer));
      }
      if (stumbles.length > 0) throw stumbles.reduce((a, b) => (b.piece < a.piece ? b : a)).what;
      return walker;
    } catch (error) {
      throw error === signal ? new Stopped(errand, progress()) : error;
    } finally {
      share.close();
      over();
    }
  }

  private worthStarting({ done, pieces }: Share, begun: NodeJS.CpuUsage): boolean {
    if (this.most === 1) return false;
    const { user, system } = process.cpuUsage(begun);
    const spent = (user + system) / 1000;
    const left = (spent * (pieces - done)) / Math.max(1, done);
    return spent >= this.patience.alone && left >= this.patience.left;
  }

  /** Sends an errand to the other threads, which are started where they are not; resolves to what they answer. */
  private ordered(brief: Brief, errand: Errand, share: Share): Promise<Answer[]> {
    while (this.others.length < this.most - 1) this.others.push(new Worker(this.entry));
    const { memory } = share;
    const answers = Promise.all(
      this.others.map((worker, i) => answered(worker, { brief, errand, threads: this.most, thread: i + 1, memory })),
    );
    // It is heard when the calling thread has walked what it took, which then is no more.
    answers.catch(() => share.close());
    return answers;
  }
}

/**
 * Does a piece of work after the other, with a turn for signals and timers now and then.
 *
 * @param next  does the next piece; false where none is left
 * @throws the signal, where it came
 */
export async function inTurns(next: () => boolean, signal: AbortSignal): Promise<void> {
  let turned = performance.now();
  while (next()) {
    if (performance.now() - turned < TURN) continue;
    await new Promise((resolve) => setImmediate(resolve));
    if (signal.aborted) throw signal;
    turned = performance.now();
  }
}

/** Goes on while springs are drawn; what comes after them. */
async function drawn<Result>(
  steps: Steps<Result>,
  first: Drawing,
  watch: Watch,
  signal: AbortSignal,
): Promise<IteratorResult<Errand, Result>> {
  const work = { kind: "drawing" } as const;
  const began = performance.now();
  let step: IteratorResult<Errand | Drawing, Result> = { done: false, value: first };
  let { drawn, of } = first;
  const progress = () => ({ share: drawn / of, walked: drawn, seconds: (performance.now() - began) / 1000 });
  const over = watch(work, progress);
  try {
    await inTurns(() => {
      step = steps.next();
      if (step.done || step.value.kind !== "drawing") return false;
      ({ drawn, of } = step.value);
      return true;
    }, signal);
    return step as IteratorResult<Errand, Result>;
  } catch (error) {
    throw error === signal ? new Stopped(work, progress()) : error;
  } finally {
    over();
  }
}

/** Walks pieces until none is left; what it stumbled at. */
async function walkedAlone(walker: Walker, share: Share, meanwhile: () => void, signal: AbortSignal): Promise<Stumble[]> {
  const next = () => {
    if (!share.walkNext(walker, 0)) return false;
    meanwhile();
    return true;
  };
  try {
    meanwhile();
    await inTurns(next, signal);
    return [];
  } catch (error) {
    if (error instanceof Stumble) return [error];
    throw error;
  }
}

/** What a promise resolves to; throws the signal where that comes first. */
export async function unlessAborted<Result>(promise: Promise<Result>, signal: AbortSignal): Promise<Result> {
  let abort = () => {};
  const aborted = new Promise<never>((_, reject) => {
    abort = () => reject(signal);
    signal.addEventListener("abort", abort);
  });
  try {
    return await Promise.race([promise, aborted]);
  } finally {
    signal.removeEventListener("abort", abort);
  }
}

/** Sends an order to a thread; resolves to its answer, and throws `threadDied` where the thread ends without one. */
export function answered(worker: Worker, order: Order | ActOrder): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const settle = () => {
      worker.off("message", hear);
      worker.off("error", fail);
      worker.off("exit", exit);
    };
    const hear = (answer: Answer) => {
      settle();
      resolve(answer);
    };
    const fail = (error: Error) => {
      settle();
      const got = `a thread ended before its part of the walk was done (${error.message})`;
      const [key, want] = "act" in order ? [order.act, "try again"] : ["--workers", "try --workers 1"];
      reject(new ProblemError([{ code: "threadDied", key, got, want }]));
    };
    const exit = (code: number) => fail(new Error(`exit ${code}`));
    worker.on("message", hear);
    worker.on("error", fail);
    worker.on("exit", exit);
    worker.postMessage(order);
  });
}
