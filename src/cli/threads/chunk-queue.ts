import type { Brief, NestedResult, RelaxResult, SweepOptions } from "../../model.ts";
import { type Problem, ProblemError } from "../../problem.ts";
import { type Errand, piecesIn, type Walker } from "../../search/tasks.ts";

/** The strips of one errand in pieces, for threads to take one after another. */
export class Share {
  readonly pieces: number;
  private readonly strips: number;
  /** The next piece, and the pieces that are done. */
  private readonly counts: Int32Array;
  /** Candidates that each thread has counted. */
  private readonly counted: Float64Array;

  /**
   * @param strips   of the errand
   * @param threads  that may share them
   * @param memory   that of the share which this one joins; absent: a new one is made
   */
  constructor(strips: number, threads: number, memory: SharedArrayBuffer = new SharedArrayBuffer(8 * (1 + threads))) {
    this.strips = strips;
    this.pieces = piecesIn(strips);
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
  get walked(): number {
    return this.counted.reduce((sum, count) => sum + count, 0);
  }

  /**
   * Take the next piece and walk it.
   *
   * @param thread  which one takes it
   * @returns false where none is left
   * @throws Stumble where the walk throws; no further piece is then taken by anyone
   */
  walkNext(walker: Walker, thread: number): boolean {
    const piece = Atomics.add(this.counts, 0, 1);
    if (piece >= this.pieces) return false;
    try {
      walker.walk(this.start(piece), this.start(piece + 1));
    } catch (error) {
      this.close();
      throw new Stumble(piece, error);
    }
    this.counted[thread] = walker.walked;
    Atomics.add(this.counts, 1, 1);
    return true;
  }

  /** Leave nothing to take. */
  close(): void {
    Atomics.store(this.counts, 0, this.pieces);
  }

  private start(piece: number): number {
    return Math.floor((piece * this.strips) / this.pieces);
  }
}

/** What a walk threw, and at which piece: of several the earliest is what a walk in one thread throws. */
export class Stumble extends Error {
  readonly piece: number;
  readonly what: unknown;

  constructor(piece: number, what: unknown) {
    super("a walk threw");
    this.piece = piece;
    this.what = what;
  }
}

/** What a thread is asked for. */
export interface Order {
  readonly brief: Brief;
  readonly errand: Errand;
  readonly threads: number;
  readonly thread: number;
  readonly memory: SharedArrayBuffer;
}

/** What a thread answers once no piece is left. */
export type Answer =
  | { readonly found: unknown }
  | { readonly piece: number; readonly problems: readonly Problem[] }
  | { readonly piece: number; readonly fault: string };

/** What a walk threw, as a thread answers it. */
export function answerOf({ piece, what }: Stumble): Answer {
  if (what instanceof ProblemError) return { piece, problems: what.problems };
  return { piece, fault: what instanceof Error ? what.message : String(what) };
}

/** What was thrown in another thread. */
export function stumbleOf(answer: Exclude<Answer, { readonly found: unknown }>): Stumble {
  return new Stumble(answer.piece, "problems" in answer ? new ProblemError(answer.problems) : new Error(answer.fault));
}

/** Acts that hand out no errands: what each takes, and what it gives. */
export interface Acts {
  readonly relax: { readonly takes: { readonly brief: Brief }; readonly gives: RelaxResult };
  readonly nested: {
    readonly takes: { readonly brief: Brief; readonly options: Pick<SweepOptions, "top"> };
    readonly gives: NestedResult;
  };
}

export type ActName = keyof Acts;

/** An act as another thread is asked for it. */
export type ActOrder = { readonly [Name in ActName]: { readonly act: Name } & Acts[Name]["takes"] }[ActName];
