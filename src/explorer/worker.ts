import type { SweepProgress } from "../model.ts";
import { answerTo, type EngineAct, type EngineAnswer, type EngineGround, type EngineRequest } from "./engine.ts";

/** How often a page is told how far a run is, ms. */
const ANEW = 250;

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
    } else if (ground !== undefined) {
      const [act, request] = data;
      let told = performance.now();
      const onProgress = (progress: SweepProgress) => {
        if (performance.now() - told < ANEW) return;
        told = performance.now();
        scope.postMessage({ kind: "progress", id: request.id, progress });
      };
      scope.postMessage(answerTo(act, ground, request, { onProgress }));
    }
  };
}
