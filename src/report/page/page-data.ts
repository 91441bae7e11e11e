import type { Brief, Choice, Design, ScatterFigures, SweepOptions, SweepResult, Wire } from "../../model.ts";

/** Survivors that a page draws at most: a chart of more is slow to brush. */
export const MOST_DRAWN = 5000;

/** The brief that a page is of, as its author wrote it: what is changed and run again in the page. */
export interface PageSource {
  /** YAML or JSON, as its file holds it. */
  readonly text: string;
  /** Name of that file. */
  readonly file: string;
  /** How much a run keeps, beside the two figures of the front and the sample. */
  readonly options: Pick<SweepOptions, "top" | "each" | "nearest">;
}

/** A finished sweep as a page carries it: its counts and brief, and every spring that is drawn as five numbers. */
export interface PageData
  extends Pick<
    SweepResult,
    | "brief"
    | "walked"
    | "rejected"
    | "feasible"
    | "frontAxes"
    | "wires"
    | "nearest"
    | "ranksAgain"
    | "proof"
    | "tableEnds"
    | "warnings"
  > {
  /** How many springs at the head of the columns have a rank: 1, 2, 3 … */
  readonly ranked: number;
  /** How many feasible springs the sample holds; absent where none was taken. */
  readonly sampled?: number;
  /** What springs drawn about each ranked one do; absent: none were drawn. */
  readonly scatter?: readonly (ScatterFigures | null)[];
  /** Which of the springs make the front, by their place in the columns. */
  readonly front: readonly number[];
  /** Their free lengths there, m: the shortest, where a figure of the front depends on it and the load leaves a choice. */
  readonly frontLengths: readonly number[];
  readonly springs: {
    readonly material: readonly number[];
    /** Place in the wires of the brief's series, one after another. */
    readonly wire: readonly number[];
    readonly ends: readonly number[];
    readonly totalTurns: readonly number[];
    readonly meanDiameter: readonly number[];
  };
}

/**
 * The springs that a page draws: the ranked ones, then the rest of the front, then the rest of the sample, each once.
 *
 * @param result  a finished sweep
 * @param kept    springs that fit and are to be drawn whatever the sample holds
 */
export function pageData(result: SweepResult, kept: readonly Choice[] = []): PageData {
  const { brief, walked, rejected, feasible, frontAxes, designs, front, nearest, proof, warnings, sample } = result;
  const sold = wiresOf(brief);
  const place = new Map<string, number>();
  const choices: Choice[] = [];
  const add = (choice: Choice): number => {
    const key = keyOf(choice, brief);
    const known = place.get(key);
    if (known !== undefined) return known;
    place.set(key, choices.length);
    return choices.push(choice) - 1;
  };
  for (const design of designs) add(choiceOf(design, brief, sold));
  const ranked = choices.length;
  const onFront = front.map((design) => add(choiceOf(design, brief, sold)));
  for (const choice of [...(sample ?? []), ...kept]) add(choice);
  const wirePlace = new Map(sold.map((wire, i) => [wireKey(wire), i]));
  return {
    brief,
    walked,
    rejected,
    feasible,
    frontAxes,
    ...(result.wires && { wires: result.wires }),
    ...(nearest && { nearest }),
    ...(result.ranksAgain && { ranksAgain: result.ranksAgain }),
    ...(proof && { proof }),
    tableEnds: result.tableEnds,
    warnings,
    ranked,
    ...(sample && { sampled: sample.length }),
    ...(brief.service.scatter ? { scatter: designs.map(({ scatter = null }) => scatter) } : {}),
    front: onFront,
    frontLengths: front.map(({ freeLength }) => freeLength),
    springs: {
      material: choices.map(({ material }) => material),
      wire: choices.map(({ wire }) => wirePlace.get(wireKey(wire)) as number),
      ends: choices.map(({ ends }) => ends),
      totalTurns: choices.map(({ totalTurns }) => totalTurns),
      meanDiameter: choices.map(({ meanDiameter }) => meanDiameter),
    },
  };
}

/** The springs of a page as choices of its brief, in the order of the columns. */
export function choicesOf({ brief, springs }: PageData): Choice[] {
  const wires = wiresOf(brief);
  return springs.material.map((material, i) => ({
    material,
    wire: wires[springs.wire[i] as number] as Wire,
    ends: springs.ends[i] as number,
    totalTurns: springs.totalTurns[i] as number,
    meanDiameter: springs.meanDiameter[i] as number,
  }));
}

/** The springs of the front as choices, each at its free length there. */
export function frontChoicesOf(data: PageData): Choice[] {
  const choices = choicesOf(data);
  return data.front.map((id, i) => ({ ...(choices[id] as Choice), freeLength: data.frontLengths[i] as number }));
}

function wiresOf(brief: Brief): Wire[] {
  return brief.sweep.wires.flatMap(({ wires }) => wires);
}

function wireKey({ series, label }: Wire): string {
  return `${series} ${label}`;
}

function choiceOf(design: Design, brief: Brief, wires: readonly Wire[]): Choice {
  return {
    material: brief.sweep.materials.findIndex(({ name }) => name === design.material),
    wire: wires.find(({ series, label }) => series === design.series && label === design.wire) as Wire,
    ends: brief.sweep.ends.findIndex(({ name }) => name === design.ends),
    totalTurns: design.totalTurns,
    meanDiameter: design.meanDiameter,
  };
}

/** Turns that follow from the diameter say nothing more about which spring it is. */
function keyOf({ material, wire, ends, totalTurns, meanDiameter }: Choice, { sweep }: Brief): string {
  return [material, wireKey(wire), ends, sweep.turns === "any" ? "" : totalTurns, meanDiameter.toPrecision(12)].join("|");
}
