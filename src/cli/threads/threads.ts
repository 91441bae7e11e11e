import { Worker } from "node:worker_threads";
import { workerEntry } from "../../disk/files.ts";
import type { Brief } from "../../model.ts";
import { ProblemError } from "../../problem.ts";
import { createTaskRunner } from "../../search/task-runner.ts";
import type { SamplingProgress, SearchTask, TaskPlan, TaskRunner } from "../../search/tasks.ts";
import {
  type ActName,
  type ActRequest,
  ChunkError,
  ChunkQueue,
  chunkErrorOf,
  type Reply,
  type TaskRequest,
} from "./chunk-queue.ts";

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

/** Work that takes long and can be stopped: a search task, reporting every feasible design, sampling springs, or a whole act. */
export type Work = SearchTask | { readonly kind: "feasibleDesigns" | "sampling" | ActName };

/** Longest that signals and timers wait for the search, where a chunk of it is not longer, ms. */
const TURN = 50;

/** Progress of a search. */
export interface Progress {
  /** Pieces done as a share of all; null where that is not known. */
  readonly fraction: number | null;
  /** Candidates counted, or springs drawn. */
  readonly counted: number;
  /** Since the search began, s. */
  readonly seconds: number;
}

/** Thrown where a search is stopped from outside. */
export class Stopped extends Error {
  readonly work: Work;
  readonly progress: Progress;

  constructor(work: Work, progress: Progress) {
    super("stopped");
    this.work = work;
    this.progress = progress;
  }
}

/** Told of a search as it begins, with a look at how far it has got; what it returns is called when the search is over. */
export type Watch = (work: Work, progress: () => Progress) => () => void;

/**
 * Runs the search tasks of a plan. The calling thread searches, and other threads join a long search. The result is the same for
 * any number of threads.
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
  constructor(most: number, patience = PATIENCE, entry = workerEntry()) {
    this.most = most;
    this.patience = patience;
    this.entry = entry;
  }

  /**
   * Execute a task plan.
   *
   * @param watch   is told of each walk
   * @param signal  stops the search
   * @throws ProblemError as the search does, or `threadDied`; Stopped where the signal came
   */
  async runPlan<Result>(brief: Brief, plan: TaskPlan<Result>, watch: Watch, signal: AbortSignal): Promise<Result> {
    let step = plan.next();
    while (!step.done) {
      const { value } = step;
      step =
        value.kind === "sampling"
          ? await whileSampling(plan, value, watch, signal)
          : plan.next(await this.runTask(brief, value, watch, signal));
    }
    return step.value;
  }

  /** End the other threads. */
  async close(): Promise<void> {
    await Promise.all(this.others.splice(0).map((worker) => worker.terminate()));
  }

  private async runTask(brief: Brief, task: SearchTask, watch: Watch, signal: AbortSignal): Promise<TaskRunner> {
    const runner = createTaskRunner(brief, task);
    const queue = new ChunkQueue(runner.slices, this.most);
    const begun = process.cpuUsage();
    const began = performance.now();
    const progress = () => ({
      fraction: queue.done / Math.max(1, queue.chunks),
      counted: queue.candidates,
      seconds: (performance.now() - began) / 1000,
    });
    const over = watch(task, progress);
    try {
      const requests: Promise<Reply[]>[] = [];
      const request = () => {
        if (requests.length === 0 && this.worthStarting(queue, begun)) requests.push(this.delegate(brief, task, queue));
      };
      const errors = await runChunks(runner, queue, request, signal);
      for (const reply of (await unlessAborted(Promise.all(requests), signal)).flat()) {
        if ("result" in reply) runner.merge(reply.result);
        else errors.push(chunkErrorOf(reply));
      }
      if (errors.length > 0) throw errors.reduce((a, b) => (b.chunk < a.chunk ? b : a)).reason;
      return runner;
    } catch (error) {
      throw error === signal ? new Stopped(task, progress()) : error;
    } finally {
      queue.close();
      over();
    }
  }

  private worthStarting({ done, chunks }: ChunkQueue, begun: NodeJS.CpuUsage): boolean {
    if (this.most === 1) return false;
    const { user, system } = process.cpuUsage(begun);
    const spent = (user + system) / 1000;
    const left = (spent * (chunks - done)) / Math.max(1, done);
    return spent >= this.patience.alone && left >= this.patience.left;
  }

  /** Sends a task to the other threads, which are started if needed; resolves to their replies. */
  private delegate(brief: Brief, task: SearchTask, queue: ChunkQueue): Promise<Reply[]> {
    while (this.others.length < this.most - 1) this.others.push(new Worker(this.entry));
    const { memory } = queue;
    const replies = Promise.all(
      this.others.map((worker, i) => replyFrom(worker, { brief, task, threads: this.most, thread: i + 1, memory })),
    );
    // It is heard when the calling thread has walked what it took, which then is no more.
    replies.catch(() => queue.close());
    return replies;
  }
}

/**
 * Does a chunk of work after the other, with a turn for signals and timers now and then.
 *
 * @param next  does the next chunk; false where none is left
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
async function whileSampling<Result>(
  plan: TaskPlan<Result>,
  first: SamplingProgress,
  watch: Watch,
  signal: AbortSignal,
): Promise<IteratorResult<SearchTask, Result>> {
  const work = { kind: "sampling" } as const;
  const began = performance.now();
  let step: IteratorResult<SearchTask | SamplingProgress, Result> = { done: false, value: first };
  let { sampled, total } = first;
  const progress = () => ({ fraction: sampled / total, counted: sampled, seconds: (performance.now() - began) / 1000 });
  const over = watch(work, progress);
  try {
    await inTurns(() => {
      step = plan.next();
      if (step.done || step.value.kind !== "sampling") return false;
      ({ sampled, total } = step.value);
      return true;
    }, signal);
    return step as IteratorResult<SearchTask, Result>;
  } catch (error) {
    throw error === signal ? new Stopped(work, progress()) : error;
  } finally {
    over();
  }
}

/** Runs chunks until none is left; returns the error, if any. */
async function runChunks(
  runner: TaskRunner,
  queue: ChunkQueue,
  meanwhile: () => void,
  signal: AbortSignal,
): Promise<ChunkError[]> {
  const next = () => {
    if (!queue.runNext(runner, 0)) return false;
    meanwhile();
    return true;
  };
  try {
    meanwhile();
    await inTurns(next, signal);
    return [];
  } catch (error) {
    if (error instanceof ChunkError) return [error];
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
export function replyFrom(worker: Worker, request: TaskRequest | ActRequest): Promise<Reply> {
  return new Promise((resolve, reject) => {
    const settle = () => {
      worker.off("message", hear);
      worker.off("error", fail);
      worker.off("exit", exit);
    };
    const hear = (reply: Reply) => {
      settle();
      resolve(reply);
    };
    const fail = (error: Error) => {
      settle();
      const got = `a thread ended before its part of the walk was done (${error.message})`;
      const [key, want] = "act" in request ? [request.act, "try again"] : ["--workers", "try --workers 1"];
      reject(new ProblemError([{ code: "threadDied", key, got, want }]));
    };
    const exit = (code: number) => fail(new Error(`exit ${code}`));
    worker.on("message", hear);
    worker.on("error", fail);
    worker.on("exit", exit);
    worker.postMessage(request);
  });
}
