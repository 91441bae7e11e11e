import type { RelaxResult, TableEnd, Units } from "../model.ts";
import { show } from "../units/show.ts";

/** What ends where a material was not tried any further, in a sentence that goes on from its size. */
const BECAUSE: Readonly<Record<TableEnd["because"], string>> = {
  rows: "the rows of its strength end",
  fit: "the power law of its strength ends",
  stated: "the sizes that its file states end",
  moduli: "the rows of its moduli end",
  soldIn: "no series is said to be sold in it",
};

/**
 * Where the tables at hand end an answer: which material, at which end, and why.
 *
 * @param ends   of a result
 * @param found  whether something fits
 * @param units  the reader's
 * @returns one sentence; empty where no table took part
 */
export function tableEndsWords(ends: readonly TableEnd[], found: boolean, units: Units): string {
  if (ends.length === 0) return "";
  const head = found
    ? "What is best here stands where the tables at hand end, so a better spring may lie beyond"
    : "Nothing fits among the sizes that the tables at hand cover";
  return `${head}: ${listed(ends, units)}.`;
}

/** The same of prices: an end at which any of the designs stands that are best with a limit eased. */
export function easedEndsWords({ best, tableEnds, brief: { units } }: RelaxResult): string {
  if (best === null || tableEnds.length === 0) return tableEndsWords(tableEnds, false, units);
  const head =
    "As asked, or with a limit eased, what is best stands where the tables at hand end, so a better spring may lie beyond";
  return `${head}: ${listed(tableEnds, units)}.`;
}

/**
 * The end of a material's tables at which one given spring stands.
 *
 * @returns such as "5 mm is the thickest size at hand of en-sh, where the rows of its strength end."
 */
export function givenEndWords({ material, end, size, because }: TableEnd, units: Units): string {
  return `${show(size, "length", units)} is the ${end} size at hand of ${material}, where ${BECAUSE[because]}.`;
}

/** Both ends of one material in one clause where the same ends there. */
function listed(ends: readonly TableEnd[], units: Units): string {
  const clauses = ends.flatMap((end, i) => {
    const [before, after] = [ends[i - 1], ends[i + 1]];
    if (before && isPair(before, end)) return [];
    if (!after || !isPair(end, after)) return [endWords(end, units)];
    const [thin, thick] = [end, after].map(({ size }) => show(size, "length", units));
    return [`${end.material} was not tried below ${thin} or above ${thick}, where ${BECAUSE[end.because]}`];
  });
  return clauses.join("; ");
}

function isPair(thin: TableEnd, thick: TableEnd): boolean {
  return (
    thin.end === "thinnest" && thick.end === "thickest" && thin.material === thick.material && thin.because === thick.because
  );
}

function endWords({ material, end, size, next, because }: TableEnd, units: Units): string {
  const at = show(size, "length", units);
  const beyond = next === undefined ? "" : ` (the next size is ${show(next, "length", units)})`;
  if (end !== "all")
    return `${material} was not tried ${end === "thickest" ? "above" : "below"} ${at}, where ${BECAUSE[because]}${beyond}`;
  const why = because === "soldIn" ? BECAUSE[because] : `${BECAUSE[because]} at ${at}`;
  return `${material} was not tried at all, for ${why}${because === "soldIn" ? "" : beyond}`;
}
