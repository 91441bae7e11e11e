import type { Brief, NestedResult, RelaxResult, SweepOptions } from "../../model.ts";
import { type Problem, ProblemError } from "../../problem.ts";
import { chunksIn, type SearchTask, type TaskRunner } from "../../search/tasks.ts";

/** The slices of one task in chunks, which threads take one after another. */
export class ChunkQueue {
  readonly chunks: number;
  private readonly slices: number;
  /** The next chunk, and the chunks that are done. */
  private readonly counts: Int32Array;
  /** Candidates that each thread has counted. */
  private readonly counted: Float64Array;

  /**
   * @param slices   of the task
   * @param threads  that may share them
   * @param memory   that of the share which this one joins; absent: a new one is made
   */
  constructor(slices: number, threads: number, memory: SharedArrayBuffer = new SharedArrayBuffer(8 * (1 + threads))) {
    this.slices = slices;
    this.chunks = chunksIn(slices);
    this.counts = new Int32Array(memory, 0, 2);
    this.counted = new Float64Array(memory, 8, threads);
  }

  get memory(): SharedArrayBuffer {
    return this.counts.buffer as SharedArrayBuffer;
  }

  get done(): number {
    return Atomics.load(this.counts, 1);
  }

  /** Candidates counted by all threads so far. */
  get candidates(): number {
    return this.counted.reduce((sum, count) => sum + count, 0);
  }

  /**
   * Take the next chunk and search it.
   *
   * @param thread  which one takes it
   * @returns false where none is left
   * @throws ChunkError where the runner throws; no thread then takes another chunk
   */
  runNext(runner: TaskRunner, thread: number): boolean {
    const chunk = Atomics.add(this.counts, 0, 1);
    if (chunk >= this.chunks) return false;
    try {
      runner.run(this.start(chunk), this.start(chunk + 1));
    } catch (error) {
      this.close();
      throw new ChunkError(chunk, error);
    }
    this.counted[thread] = runner.counted;
    Atomics.add(this.counts, 1, 1);
    return true;
  }

  /** Leave nothing to take. */
  close(): void {
    Atomics.store(this.counts, 0, this.chunks);
  }

  private start(chunk: number): number {
    return Math.floor((chunk * this.slices) / this.chunks);
  }
}

/** An error with the chunk in which it occurred; of several, the earliest is the one that a single thread throws. */
export class ChunkError extends Error {
  readonly chunk: number;
  readonly reason: unknown;

  constructor(chunk: number, reason: unknown) {
    super("a walk threw");
    this.chunk = chunk;
    this.reason = reason;
  }
}

/** What a thread is asked for. */
export interface TaskRequest {
  readonly brief: Brief;
  readonly task: SearchTask;
  readonly threads: number;
  readonly thread: number;
  readonly memory: SharedArrayBuffer;
}

/** The reply of a thread once no chunk is left. */
export type Reply =
  | { readonly result: unknown }
  | { readonly chunk: number; readonly problems: readonly Problem[] }
  | { readonly chunk: number; readonly fault: string };

/** An error of a runner as the reply of a thread. */
export function replyOf({ chunk, reason }: ChunkError): Reply {
  if (reason instanceof ProblemError) return { chunk, problems: reason.problems };
  return { chunk, fault: reason instanceof Error ? reason.message : String(reason) };
}

/** What was thrown in another thread. */
export function chunkErrorOf(reply: Exclude<Reply, { readonly result: unknown }>): ChunkError {
  return new ChunkError(reply.chunk, "problems" in reply ? new ProblemError(reply.problems) : new Error(reply.fault));
}

/** Acts without search tasks: the input and the result of each. */
export interface Acts {
  readonly relax: { readonly takes: { readonly brief: Brief }; readonly gives: RelaxResult };
  readonly nested: {
    readonly takes: { readonly brief: Brief; readonly options: Pick<SweepOptions, "top"> };
    readonly gives: NestedResult;
  };
}

export type ActName = keyof Acts;

/** An act as another thread is asked for it. */
export type ActRequest = { readonly [Name in ActName]: { readonly act: Name } & Acts[Name]["takes"] }[ActName];
