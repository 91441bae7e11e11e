import { parentPort } from "node:worker_threads";
import { walkerOf } from "../../search/task-runner.ts";
import { type ActOrder, type Answer, answerOf, type Order, Share, Stumble } from "./chunk-queue.ts";

const answer = (said: Answer) => parentPort?.postMessage(said);

/**
 * What one more thread runs: it takes pieces of each errand that it is sent until none is left, and answers what it found, or does an
 * act from end to end.
 */
parentPort?.on("message", (order: Order | ActOrder) => ("act" in order ? act(order) : walk(order)));

function walk({ brief, errand, threads, thread, memory }: Order): void {
  const walker = walkerOf(brief, errand);
  const share = new Share(walker.strips, threads, memory);
  try {
    while (share.walkNext(walker, thread));
    answer({ found: walker.found });
  } catch (error) {
    if (!(error instanceof Stumble)) throw error;
    answer(answerOf(error));
  }
}

async function act(order: ActOrder): Promise<void> {
  try {
    answer({ found: await done(order) });
  } catch (error) {
    answer(answerOf(new Stumble(0, error)));
  }
}

/** Each act is loaded when it is asked for, so that a thread that walks is up soon. */
async function done(order: ActOrder): Promise<unknown> {
  switch (order.act) {
    case "relax":
      return (await import("../../studies/relax.ts")).relax(order.brief);
    case "nested":
      return (await import("../../studies/nested.ts")).nestedSweep(order.brief, order.options);
  }
}
