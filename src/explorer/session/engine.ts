import { readBrief } from "../../brief/read.ts";
import type { Brief, Lookup, MeritName, RelaxResult, SweepOptions, SweepProgress, SweepWatch } from "../../model.ts";
import { type Problem, ProblemError } from "../../problem.ts";
import { MOST_DRAWN, type PageData, pageData } from "../../report/page/page-data.ts";
import { relax } from "../../studies/relax.ts";
import { sweep } from "../../studies/sweep.ts";
import { choiceOfKey, type SpringKey } from "./spring-key.ts";

/** What every run of a page has in common. */
export interface EngineSetup {
  /** Name of the brief's file: its title where it has none. */
  readonly file: string;
  /** Catalog entries that a text may name: those that the brief as asked names. */
  readonly carried: Pick<Brief["sweep"], "wires" | "materials" | "ends">;
  /** How much is kept. */
  readonly options: SweepOptions;
}

/** A text to run. */
export interface EngineRequest {
  readonly id: number;
  readonly text: string;
  /** The two figures of the front. */
  readonly axes: readonly [MeritName, MeritName];
  /** The spring that is chosen: drawn as long as it fits, whatever the sample holds. */
  readonly kept?: SpringKey;
}

/** What is wrong with a text: the key, and a sentence without it. */
export interface EngineProblem {
  readonly key: string;
  readonly sentence: string;
}

/** What comes of a request, as data that can be sent between threads. */
export type EngineAnswer =
  | { readonly kind: "run"; readonly id: number; readonly data: PageData }
  /** How far a run is that is not finished. */
  | { readonly kind: "progress"; readonly id: number; readonly progress: SweepProgress }
  | { readonly kind: "relaxed"; readonly id: number; readonly relaxed: RelaxResult }
  | { readonly kind: "problems"; readonly id: number; readonly problems: readonly EngineProblem[] };

/** What is done with a text. */
export type EngineAct = "sweep" | "relax";

/**
 * Read a text as the command line reads it and do what is asked with it, as the command line does. Does not throw: what is wrong
 * comes back as problems.
 *
 * @param follow  told how far a sweep is
 */
export function answerTo(
  act: EngineAct,
  setup: EngineSetup,
  { id, text, axes, kept }: EngineRequest,
  follow: SweepWatch = {},
): EngineAnswer {
  try {
    const brief = readBrief(text, setup.file, lookupIn(setup.carried));
    if (act === "relax") return { kind: "relaxed", id, relaxed: relax(brief) };
    const result = sweep(brief, { ...setup.options, ...follow, frontAxes: axes, sample: MOST_DRAWN, byWire: true });
    const choice = kept && choiceOfKey(kept, brief);
    return { kind: "run", id, data: pageData(result, choice ? [choice] : []) };
  } catch (error) {
    return { kind: "problems", id, problems: problemsIn(error) };
  }
}

function problemsIn(error: unknown): readonly EngineProblem[] {
  if (error instanceof ProblemError) return error.problems.map(({ key, got, want }) => ({ key, sentence: `${got}; ${want}` }));
  return [{ key: "brief", sentence: `could not be swept (${error}); that is a fault of this page, not of the brief` }];
}

/** Names answered from what the page carries, as the author wrote them: a shipped entry by its name, a file by its path. */
function lookupIn({ wires, materials, ends }: EngineSetup["carried"]): Lookup {
  return {
    series: (name) => found("wire series", name, wires),
    material: (name) => found("material", name, materials),
    ends: (name) => found("end style", name, ends),
  };
}

function found<Thing extends { readonly name: string; readonly path?: string }>(
  kind: string,
  name: string,
  things: readonly Thing[],
): Thing {
  const writtenAs = ({ name: own, path }: Thing) => path ?? own;
  const thing = things.find((one) => writtenAs(one) === name);
  if (thing !== undefined) return thing;
  const problem: Problem = {
    code: "notCarried",
    key: kind,
    got: `this page carries no ${kind} "${name}"`,
    want: `it carries ${things.map(writtenAs).join(", ")}; write a page of a brief that names it`,
  };
  throw new ProblemError([problem]);
}

/** How often a page is told how far a run is, ms. */
const ANEW = 250;

/** What a worker is told: once what its runs have in common, then one act after another. */
type Told = EngineSetup | readonly [EngineAct, EngineRequest];

/** The worker's own thread, as far as it is used. */
interface WorkerScope {
  onmessage: ((event: { readonly data: Told }) => void) | null;
  postMessage(answer: EngineAnswer | "ready"): void;
}

/** Answer requests from the page that started this worker. */
export function serveRequests(): void {
  const scope = globalThis as unknown as WorkerScope;
  let setup: EngineSetup | undefined;
  scope.onmessage = ({ data }) => {
    if ("file" in data) {
      setup = data;
      scope.postMessage("ready");
    } else if (setup !== undefined) {
      const [act, request] = data;
      let told = performance.now();
      const onProgress = (progress: SweepProgress) => {
        if (performance.now() - told < ANEW) return;
        told = performance.now();
        scope.postMessage({ kind: "progress", id: request.id, progress });
      };
      scope.postMessage(answerTo(act, setup, request, { onProgress }));
    }
  };
}
