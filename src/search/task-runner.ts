import { limitsFor } from "../constrain/limits/limits.ts";
import { resolveRequirements } from "../constrain/requirements/requirements.ts";
import type { Brief, SweepProgress, SweepWatch } from "../model.ts";
import { FullSearch } from "./full-search.ts";
import { LeastViolationSearch } from "./least-violation.ts";
import { NearMissSearch } from "./near-misses.ts";
import { chunksIn, type SearchTask, type TaskPlan, type TaskRunner } from "./tasks.ts";

/** The runner of a search task of a brief. */
export function createTaskRunner(brief: Brief, task: SearchTask): TaskRunner {
  const requirements = resolveRequirements(brief);
  switch (task.kind) {
    case "fullSearch":
      return new FullSearch(brief, requirements, limitsFor(requirements), task.options);
    case "nearMiss":
      return new NearMissSearch(brief, requirements, limitsFor(requirements), task.limit, task.passing);
    case "leastViolation":
      return new LeastViolationSearch(brief, requirements, task.nonEmpty);
  }
}

function runTask(brief: Brief, task: SearchTask, tell: ((progress: SweepProgress) => void) | null): TaskRunner {
  const runner = createTaskRunner(brief, task);
  const { slices } = runner;
  const work = task.kind === "fullSearch" ? "walk" : "nearest";
  const chunks = tell === null ? 1 : chunksIn(slices);
  const start = (chunk: number) => Math.floor((chunk * slices) / chunks);
  for (let chunk = 0; chunk < chunks; chunk++) {
    runner.run(start(chunk), start(chunk + 1));
    tell?.({ work, share: (chunk + 1) / chunks, counted: runner.counted });
  }
  return runner;
}

/**
 * Execute a task plan in this thread, one task after another.
 *
 * @throws the reason of the signal where it is aborted
 */
export function runPlan<Result>(brief: Brief, plan: TaskPlan<Result>, { onProgress, signal }: SweepWatch = {}): Result {
  const followed = (progress: SweepProgress) => {
    onProgress?.(progress);
    signal?.throwIfAborted();
  };
  const tell = onProgress || signal ? followed : null;
  signal?.throwIfAborted();
  let step = plan.next();
  while (!step.done) {
    const { value } = step;
    if (value.kind === "sampling") {
      tell?.({ work: "draw", share: value.sampled / value.total, counted: value.sampled });
      step = plan.next();
    } else step = plan.next(runTask(brief, value, tell));
  }
  return step.value;
}
