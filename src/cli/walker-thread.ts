import { parentPort } from "node:worker_threads";
import { walkerOf } from "../walkers.ts";
import { type Answer, answerOf, type Order, Share, Stumble } from "./share.ts";

/** What one more thread runs: it takes pieces of each errand that it is sent until none is left, and answers what it found. */
parentPort?.on("message", ({ brief, errand, threads, thread, memory }: Order) => {
  const answer = (said: Answer) => parentPort?.postMessage(said);
  const walker = walkerOf(brief, errand);
  const share = new Share(walker.strips, threads, memory);
  try {
    while (share.walkNext(walker, thread));
    answer({ found: walker.found });
  } catch (error) {
    if (!(error instanceof Stumble)) throw error;
    answer(answerOf(error));
  }
});
