import type { Brief, Load, Lookup, MeanDiameterSweep, MeritName, Sweep, TurnsStep } from "../../model.ts";
import { type Find, findNamed, withOwnMaterials } from "../catalog-entries.ts";
import { pinnedRate } from "../fixed-rate.ts";
import { exactQuantity, writtenUnits } from "../quantities.ts";
import { Section } from "../section.ts";

/** The section `sweep` -> the catalog entries to walk and how; undefined where something in it is wrong. */
export function readSweep(sweep: Section, lookup: Lookup, load: Load | undefined): Sweep | undefined {
  const wires = findAll(sweep, "wires", lookup.series);
  const materials = findAll(sweep, "materials", lookup.material);
  const ends = findAll(sweep, "ends", lookup.ends);
  const turns = readTurns(sweep);
  const meanDiameter = readMeanDiameter(sweep, turns, load);
  const freeLength = readFreeLength(sweep);
  if (!wires || !materials || !ends || !turns || !meanDiameter) return undefined;
  const series = wires.map((one) => withOwnMaterials(one, materials));
  return { wires: series, materials, ends, turns, meanDiameter, ...(freeLength && { freeLength }) };
}

function readFreeLength(sweep: Section): Sweep["freeLength"] {
  if (!sweep.has("freeLength")) return undefined;
  const section = sweep.section("freeLength");
  const step = section instanceof Section && section.require("step") ? exactQuantity(section, "step") : undefined;
  return step === undefined ? undefined : { step };
}

function findAll<Thing extends { readonly name: string }>(
  sweep: Section,
  key: string,
  find: Find<Thing>,
): readonly Thing[] | undefined {
  const listed = sweep.require(key) ? sweep.names(key) : undefined;
  const found = listed?.map((one) => findNamed(sweep, key, one, find));
  if (!found?.every((thing) => thing !== undefined)) return undefined;
  // Two paths may lead to entries of one name, which no result could tell apart.
  const names = found.map(({ name }) => name);
  const repeated = names.find((name, index) => names.indexOf(name) < index);
  if (repeated === undefined) return found;
  return sweep.problem(key, "twice", `two of them are called "${repeated}"`, "give one of the files another name");
}

function readTurns(sweep: Section): TurnsStep | undefined {
  if (sweep.has("turns")) return sweep.word<TurnsStep>("turns");
  sweep.takeDefault("turns", "quarter", "default of coilsieve");
  return "quarter";
}

function readMeanDiameter(sweep: Section, turns: TurnsStep | undefined, load: Load | undefined): MeanDiameterSweep | undefined {
  const solved = load !== undefined && turns !== undefined && turns !== "any" && pinnedRate(load) !== null;
  if (load !== undefined && turns === "any" && pinnedRate(load) === null) {
    const want = "the turns are solved only where the rate is fixed; say quarter, half or whole, or fix the rate by a nominal";
    sweep.problem("turns", "contradiction", "any, where the load leaves the rate free", want);
  }
  if (!sweep.has("meanDiameter")) {
    // Where the mean diameter is solved for the rate there is no step to take.
    if (solved) return "exact";
    const { length } = writtenUnits(sweep.reading.asked);
    sweep.takeDefault("meanDiameter", length === "in" ? "{ step: 0.005 in }" : "{ step: 0.1 mm }", "default of coilsieve");
    return { step: length === "in" ? 0.005 * 0.0254 : 0.1 / 1000 };
  }
  const section = sweep.section("meanDiameter");
  if (!(section instanceof Section)) return section as "exact" | undefined;
  const step = section.require("step") ? exactQuantity(section, "step") : undefined;
  if (step !== undefined && solved) {
    const got = "a step is given, but the load fixes the rate and the turns are counted, so D is solved";
    return sweep.problem("meanDiameter", "contradiction", got, "drop step, or say turns: any");
  }
  return step === undefined ? undefined : { step };
}

/** A word of `rank`: a figure, or the yield of springs that are drawn. */
export type RankWord = MeritName | "yield";

/** The ranking of a brief, as the engine reads it. */
export type Ranking = Pick<Brief, "rank" | "yieldFirst">;

/**
 * The words of a ranking -> the figures that rank, and whether the best by them are ranked again by yield.
 *
 * @param words      as typed, none twice
 * @param isDrawn  whether the brief asks springs to be drawn
 * @returns what is wrong and what would be right, where the words ask what cannot be
 */
export function rankingOf(
  words: readonly RankWord[],
  isDrawn: boolean,
): Ranking | { readonly code: string; readonly got: string; readonly want: string } {
  const rank = words.filter((word) => word !== "yield");
  if (rank.length === words.length) return { rank };
  if (!isDrawn) {
    return { code: "yieldOfNone", got: "yield, where no springs are drawn", want: "write service: { scatter: { draws: 2000 } }" };
  }
  if (words[0] === "yield" && rank.length > 0) return { rank, yieldFirst: true };
  const got = rank.length === 0 ? "yield alone, which does not say which springs to draw" : "yield after another figure";
  const want = "the best by the other figures are drawn and ranked again by yield: write [yield, mass]";
  return { code: "yieldFirst", got, want };
}
