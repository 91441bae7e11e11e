import { checkWritable } from "../../disk/files.ts";
import { ReaderClosed, type Stream, streamInto, streamOut } from "../../disk/stream.ts";
import type { Design, SweepResult } from "../../model.ts";
import { ProblemError } from "../../problem.ts";
import { survivorLine } from "../../report/files/json.ts";
import { type FeasibleDesignSearch, feasibleDesignSearch } from "../../search/feasible-designs.ts";
import { unlessStopped } from "../threads/interrupt.ts";
import { progressLine } from "../threads/progress.ts";
import { inTurns, Stopped, type Watch } from "../threads/threads.ts";

/** The files that hold every feasible spring. */
export interface SurvivorFiles {
  /** One JSON object a line; - is stdout. */
  readonly ndjson?: string;
  readonly parquet?: string;
}

/**
 * Make sure that the files asked for can be written.
 *
 * @throws ProblemError `tableOnStdout`, or as `checkWritable`
 */
export function checkSurvivorFiles({ ndjson, parquet }: SurvivorFiles): void {
  if (parquet === "-") {
    const problem = { code: "tableOnStdout", key: "--parquet", got: "a table of bytes is not printed" };
    throw new ProblemError([{ ...problem, want: "name a file, such as springs.parquet" }]);
  }
  if (ndjson !== undefined && ndjson !== "-") checkWritable(ndjson, "--ndjson");
  if (parquet !== undefined) checkWritable(parquet, "--parquet");
}

/** One form of output: a stream, and what makes its bytes. */
interface Output extends Stream {
  readonly add: (design: Design) => void;
}

/**
 * Every feasible spring of a sweep into the files asked for, as they come. A reader of stdout that has seen enough ends what is
 * printed, not what is written.
 *
 * @returns false where Ctrl-C stopped it; a file that is not finished is then as it was before
 * @throws ProblemError `unwritable`, the same holding for files
 */
export async function writeSurvivors(result: SweepResult, files: SurvivorFiles): Promise<boolean> {
  const outputs = new Set<Output>();
  const tell = (act: (output: Output) => void) => {
    for (const output of outputs) {
      try {
        act(output);
      } catch (error) {
        if (!(error instanceof ReaderClosed)) throw error;
        outputs.delete(output);
        if (outputs.size === 0) throw error;
      }
    }
  };
  try {
    if (files.ndjson === undefined && files.parquet === undefined) return true;
    const walk = feasibleDesignSearch(result.brief, (design) => tell((output) => output.add(design)));
    // The signal is heard before there is a file that it could leave behind.
    const done = await unlessStopped(result.brief, async (signal) => {
      if (files.ndjson !== undefined) outputs.add(lines(files.ndjson));
      if (files.parquet !== undefined) outputs.add(await table(files.parquet, result));
      return walkedThrough(walk, progressLine(result.brief), signal);
    });
    if (done === null) for (const output of outputs) output.abandon();
    else tell((output) => output.finish());
    return done !== null;
  } catch (error) {
    for (const output of outputs) output.abandon();
    if (!(error instanceof ReaderClosed)) throw error;
    return true;
  }
}

/** Walks slice by slice; throws `Stopped` where the signal came. */
async function walkedThrough(walk: FeasibleDesignSearch, watch: Watch, signal: AbortSignal): Promise<true> {
  const work = { kind: "feasibleDesigns" } as const;
  const began = performance.now();
  let slice = 0;
  const progress = () => ({
    fraction: slice / Math.max(1, walk.slices),
    counted: walk.counted,
    seconds: (performance.now() - began) / 1000,
  });
  const next = () => {
    if (slice >= walk.slices) return false;
    walk.run(slice, slice + 1);
    slice++;
    return true;
  };
  const over = watch(work, progress);
  try {
    await inTurns(next, signal);
    return true;
  } catch (error) {
    throw error === signal ? new Stopped(work, progress()) : error;
  } finally {
    over();
  }
}

function lines(path: string): Output {
  const stream = path === "-" ? streamOut() : streamInto(path, "--ndjson");
  return { ...stream, add: (design) => stream.write(survivorLine(design)) };
}

async function table(path: string, { brief, designs }: SweepResult): Promise<Output> {
  const { parquetRows } = await import("../../report/files/parquet.ts");
  const stream = streamInto(path, "--parquet");
  const rows = parquetRows(brief, designs[0], stream.write);
  const finish = () => {
    rows.finish();
    stream.finish();
  };
  return { ...stream, add: rows.add, finish };
}
