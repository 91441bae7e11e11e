import { answerTo, type EngineAct, type EngineAnswer, type EngineGround, type EngineRequest } from "./engine.ts";

/** What a worker is told: once what its runs have in common, then one act after another. */
type Told = EngineGround | readonly [EngineAct, EngineRequest];

/** The worker's own thread, as far as it is used. */
interface WorkerScope {
  onmessage: ((event: { readonly data: Told }) => void) | null;
  postMessage(answer: EngineAnswer | "ready"): void;
}

/** Answer requests from the page that started this worker. */
export function serveRequests(): void {
  const scope = globalThis as unknown as WorkerScope;
  let ground: EngineGround | undefined;
  scope.onmessage = ({ data }) => {
    if ("file" in data) {
      ground = data;
      scope.postMessage("ready");
    } else if (ground !== undefined) scope.postMessage(answerTo(data[0], ground, data[1]));
  };
}
