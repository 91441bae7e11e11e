import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Brief, SweepOptions } from "../../src/model.ts";
import { createTaskRunner } from "../../src/search/task-runner.ts";
import type { TaskPlan, TaskRunner } from "../../src/search/tasks.ts";
import { sweep, sweepSteps } from "../../src/studies/sweep.ts";
import { above, briefs, CASES, RANDOM } from "./briefs.ts";

/** How a walk is shared: whose each piece is, how long it is, and in what order what was found is put together. */
interface Sharing {
  readonly owners: readonly number[];
  readonly lengths: readonly number[];
  readonly order: readonly number[];
}

const sharing = (runners: number): fc.Arbitrary<Sharing> =>
  fc.record({
    owners: fc.array(fc.nat(runners - 1), { minLength: 1, maxLength: 20 }),
    lengths: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 7 }),
    order: fc.shuffledSubarray([...Array(runners).keys()], { minLength: runners }),
  });

function walkedBy({ owners, lengths, order }: Sharing, runners: readonly TaskRunner[]): TaskRunner {
  const { slices } = runners[0] as TaskRunner;
  for (let piece = 0, from = 0; from < slices; piece++) {
    const to = Math.min(slices, from + (lengths[piece % lengths.length] as number));
    runners[owners[piece % owners.length] as number]?.run(from, to);
    from = to;
  }
  const [first, ...others] = order.map((which) => runners[which] as TaskRunner);
  // As one thread hands it to another.
  for (const { partial } of others) first?.merge(structuredClone(partial));
  return first as TaskRunner;
}

function sharedSweep<Result>(brief: Brief, steps: TaskPlan<Result>, shared: Sharing): Result {
  let step = steps.next();
  while (!step.done) {
    if (step.value.kind === "sampling") {
      step = steps.next();
      continue;
    }
    const task = structuredClone(step.value);
    const runners = shared.order.map(() => createTaskRunner(structuredClone(brief), task));
    step = steps.next(walkedBy(shared, runners));
  }
  return step.value;
}

const OPTIONS: readonly SweepOptions[] = [
  { sample: 30, nearest: true },
  { top: 3, each: "wire" },
  { each: "ends", frontAxes: ["mass", "solidSafety"], sample: 5 },
];

const walked = CASES.flatMap((one) =>
  (/Nominal|Tolerance|^deflection$/.test(one.load) && !one.turnsAny ? [false] : [false, true]).map((exact) => ({
    ...one,
    exact,
  })),
);

describe("a sweep whose walks are shared", () => {
  it.each(walked)(
    "is the same bytes by one, two and three walkers: $load, turns any: $turnsAny, exact: $exact",
    ({ load, turnsAny, exact }) => {
      let fitted = 0;
      fc.assert(
        fc.property(
          briefs(load, turnsAny, exact),
          fc.constantFrom(...OPTIONS),
          sharing(1),
          sharing(2),
          sharing(3),
          (brief, options, ...ways) => {
            const whole = sweep(brief, options);
            if (whole.feasible > 0) fitted++;
            for (const way of ways) {
              expect(JSON.stringify(sharedSweep(brief, sweepSteps(brief, options), way))).toBe(JSON.stringify(whole));
            }
          },
        ),
        { ...RANDOM, numRuns: Math.ceil(RANDOM.numRuns / 2) },
      );
      expect(fitted).toBeGreaterThan(above(0));
    },
    60_000,
  );
});
