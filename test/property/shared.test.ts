import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Brief, SweepOptions } from "../../src/model.ts";
import { walkerOf } from "../../src/search/task-runner.ts";
import type { Steps, Walker } from "../../src/search/tasks.ts";
import { sweep, sweepSteps } from "../../src/studies/sweep.ts";
import { above, briefs, CASES, RANDOM } from "./briefs.ts";

/** How a walk is shared: whose each piece is, how long it is, and in what order what was found is put together. */
interface Sharing {
  readonly owners: readonly number[];
  readonly lengths: readonly number[];
  readonly order: readonly number[];
}

const sharing = (walkers: number): fc.Arbitrary<Sharing> =>
  fc.record({
    owners: fc.array(fc.nat(walkers - 1), { minLength: 1, maxLength: 20 }),
    lengths: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 7 }),
    order: fc.shuffledSubarray([...Array(walkers).keys()], { minLength: walkers }),
  });

function walkedBy({ owners, lengths, order }: Sharing, walkers: readonly Walker[]): Walker {
  const { strips } = walkers[0] as Walker;
  for (let piece = 0, from = 0; from < strips; piece++) {
    const to = Math.min(strips, from + (lengths[piece % lengths.length] as number));
    walkers[owners[piece % owners.length] as number]?.walk(from, to);
    from = to;
  }
  const [first, ...others] = order.map((which) => walkers[which] as Walker);
  // As one thread hands it to another.
  for (const { found } of others) first?.absorb(structuredClone(found));
  return first as Walker;
}

function sharedSweep<Result>(brief: Brief, steps: Steps<Result>, shared: Sharing): Result {
  let step = steps.next();
  while (!step.done) {
    if (step.value.kind === "drawing") {
      step = steps.next();
      continue;
    }
    const errand = structuredClone(step.value);
    const walkers = shared.order.map(() => walkerOf(structuredClone(brief), errand));
    step = steps.next(walkedBy(shared, walkers));
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
