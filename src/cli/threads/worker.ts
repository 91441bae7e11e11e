import { parentPort } from "node:worker_threads";
import { createTaskRunner } from "../../search/task-runner.ts";
import { type ActRequest, ChunkError, ChunkQueue, type Reply, replyOf, type TaskRequest } from "./chunk-queue.ts";

const reply = (said: Reply) => parentPort?.postMessage(said);

/**
 * What one more thread runs: it takes chunks of each task that it receives until none is left, and replies with its partial result,
 * or does an act from end to end.
 */
parentPort?.on("message", (request: TaskRequest | ActRequest) => ("act" in request ? act(request) : runChunks(request)));

function runChunks({ brief, task, threads, thread, memory }: TaskRequest): void {
  const runner = createTaskRunner(brief, task);
  const queue = new ChunkQueue(runner.slices, threads, memory);
  try {
    while (queue.runNext(runner, thread));
    reply({ result: runner.partial });
  } catch (error) {
    if (!(error instanceof ChunkError)) throw error;
    reply(replyOf(error));
  }
}

async function act(request: ActRequest): Promise<void> {
  try {
    reply({ result: await done(request) });
  } catch (error) {
    reply(replyOf(new ChunkError(0, error)));
  }
}

/** Each act is loaded when it is asked for, so that a thread that walks is up soon. */
async function done(request: ActRequest): Promise<unknown> {
  switch (request.act) {
    case "relax":
      return (await import("../../studies/relax.ts")).relax(request.brief);
    case "nested":
      return (await import("../../studies/nested.ts")).nestedSweep(request.brief, request.options);
  }
}
