import { answerTo, type EngineAct, type EngineAnswer, type EngineRequest, type EngineSetup } from "./engine.ts";

/** Makes the runs of a session, in a worker where the browser allows one. */
export interface Runner {
  /** Run a text; of those that wait only the newest is run, and a run that takes long is ended for it. */
  run(request: EngineRequest): void;
  /** End the run that is going, and what waits; no answer comes of them. */
  stop(): void;
  /** Price the limits of a text, beside the runs and without delaying one. */
  relax(request: EngineRequest): void;
  /** What a reader should know of how runs are made; undefined where they are made as they should be. */
  readonly notice: string | undefined;
}

/** What a runner needs. */
export interface RunnerParts {
  readonly setup: EngineSetup;
  /** What the page was written with. It is run once to warm the worker, whose first run is several times slower. */
  readonly asked: EngineRequest;
  /** The page's own script, which is the worker's too. */
  readonly script: string;
  readonly answer: (answer: EngineAnswer) => void;
}

const OWN_THREAD =
  "This browser lets a page opened so start no worker: the sweep runs on the page's own thread, which stands still meanwhile.";

/** Runs in a worker that is started while the page is idle, prices in another that is started when first asked for. */
export function startRunner(parts: RunnerParts): Runner {
  const queues = { sweep: new WorkerQueue("sweep", parts), relax: new WorkerQueue("relax", parts) };
  whenIdle(() => queues.sweep.warm(parts.asked));
  return {
    run: (request) => queues.sweep.ask(request),
    stop: () => queues.sweep.end(),
    relax: (request) => queues.relax.ask(request),
    get notice() {
      return queues.sweep.isOnOwnThread ? OWN_THREAD : undefined;
    },
  };
}

/**
 * How long a run may go on once a newer one waits, ms, and how long each may take in any case: while a limit is dragged, runs that
 * take no longer are shown one after the other.
 */
const AFTER_NEWER = 200;
const IN_ANY_CASE = 600;

/** A worker that dies is started once more; one that never answered was refused, and is not tried again. */
const MOST_DEATHS = 2;

/** One act, one request at a time: while one is going only the newest waits. */
class WorkerQueue {
  isOnOwnThread = false;
  private readonly act: EngineAct;
  private readonly parts: RunnerParts;
  private worker: Worker | undefined;
  private deaths = 0;
  private hasAnswered = false;
  private going: EngineRequest | undefined;
  private waiting: EngineRequest | undefined;
  /** When the run that is going began, and what ends it. */
  private began = 0;
  private ending: ReturnType<typeof setTimeout> | undefined;

  constructor(act: EngineAct, parts: RunnerParts) {
    this.act = act;
    this.parts = parts;
  }

  ask(request: EngineRequest): void {
    if (this.going === undefined) this.send(request);
    else {
      this.waiting = request;
      const left = Math.max(AFTER_NEWER, this.began + IN_ANY_CASE - performance.now());
      this.ending ??= setTimeout(() => this.hurry(), left);
    }
  }

  /** End what is going and what waits. */
  end(): void {
    this.worker?.terminate();
    this.worker = undefined;
    this.waiting = undefined;
    this.over();
  }

  /** Run what waits in place of what is going, in a new worker: a worker that sweeps hears nothing. */
  private hurry(): void {
    const next = this.waiting;
    // On the page's own thread what is going cannot be ended.
    if (next === undefined || this.worker === undefined) return;
    this.end();
    this.send(next);
  }

  private over(): void {
    clearTimeout(this.ending);
    this.ending = undefined;
    this.going = undefined;
  }

  /** Start the worker and have it run something, so that the first request finds it at its best. */
  warm(request: EngineRequest): void {
    if (this.going !== undefined) return;
    this.wake();
    if (this.worker !== undefined) this.send(request);
  }

  private wake(): void {
    if (this.worker !== undefined || this.isOnOwnThread) return;
    try {
      const address = URL.createObjectURL(new Blob([this.parts.script], { type: "text/javascript" }));
      const worker = new Worker(address);
      // Of a worker that was ended an answer may still be on its way.
      const ours = () => worker === this.worker;
      worker.addEventListener("message", ({ data }: MessageEvent<EngineAnswer | "ready">) => ours() && this.hear(data));
      worker.addEventListener("message", () => URL.revokeObjectURL(address), { once: true });
      worker.addEventListener("error", (event) => {
        event.preventDefault();
        if (ours()) this.lose();
      });
      worker.addEventListener("messageerror", () => ours() && this.lose());
      worker.postMessage(this.parts.setup);
      this.worker = worker;
    } catch {
      this.isOnOwnThread = true;
    }
  }

  private send(request: EngineRequest): void {
    this.going = request;
    this.began = performance.now();
    this.wake();
    if (this.worker !== undefined) this.worker.postMessage([this.act, request]);
    // A frame first, so that the page shows that it is busy before it stands still.
    else requestAnimationFrame(() => setTimeout(() => this.hear(answerTo(this.act, this.parts.setup, request))));
  }

  private hear(answer: EngineAnswer | "ready"): void {
    this.hasAnswered = true;
    if (answer === "ready") return;
    if (answer.kind === "progress") {
      this.parts.answer(answer);
      return;
    }
    this.over();
    const next = this.waiting;
    this.waiting = undefined;
    // The next is under way before the page draws what came.
    if (next !== undefined) this.send(next);
    this.parts.answer(answer);
  }

  private lose(): void {
    this.worker?.terminate();
    this.worker = undefined;
    this.deaths++;
    if (!this.hasAnswered || this.deaths >= MOST_DEATHS) this.isOnOwnThread = true;
    const lost = this.waiting ?? this.going;
    this.waiting = undefined;
    this.over();
    // What only warmed the worker is not missed.
    if (lost !== undefined && lost !== this.parts.asked) this.send(lost);
  }
}

function whenIdle(act: () => void): void {
  if ("requestIdleCallback" in window) window.requestIdleCallback(act, { timeout: 2000 });
  else setTimeout(act, 200);
}
