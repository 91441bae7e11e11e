import { type EngineAnswer, type EngineGround, type EngineRequest, relaxRequest, runRequest } from "./engine.ts";

/** Makes the runs of a session, in a worker where the browser allows one. */
export interface Runner {
  /** Run a text; of those that wait only the newest is run. */
  run(request: EngineRequest): void;
  /** Price the limits of a text, beside the runs and without delaying one. */
  relax(request: EngineRequest): void;
  /** What a reader should know of how runs are made; undefined where they are made as they should be. */
  readonly notice: string | undefined;
}
