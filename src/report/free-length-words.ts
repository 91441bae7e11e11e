import type { Brief, Design, Units } from "../model.ts";
import { show, showNumber, unitLabel } from "../units/show.ts";
import type { Facts } from "./facts.ts";

/** Two free lengths nearer than this share are one. */
const SAME = 1e-6;

/** The free lengths at which every limit holds, without their unit, as "55.9 to 57.7"; null where there is only one, or none. */
export function freeLengthRangeNumbers({ freeLengthRange: range }: Design, units: Units): string | null {
  if (range === null || range.max - range.min <= SAME * range.max) return null;
  return `${showNumber(range.min, "length", units)} to ${showNumber(range.max, "length", units)}`;
}

/** How far the free length of a spring may move, in one sentence or none. */
export function freeLengthSentences(brief: Brief, design: Design): string[] {
  const numbers = freeLengthRangeNumbers(design, brief.units);
  return numbers === null ? [] : [`Every limit holds at a free length of ${numbers} ${unitLabel("length", brief.units)}.`];
}

/** The same for a page; null where the free length cannot move. */
export function freeLengthFacts(brief: Brief, design: Design): Facts | null {
  const numbers = freeLengthRangeNumbers(design, brief.units);
  if (numbers === null) return null;
  return {
    heading: "Free length",
    entries: [
      ["as reported", show(design.freeLength, "length", brief.units)],
      ["every limit holds at", `${numbers} ${unitLabel("length", brief.units)}`],
    ],
    notes: ["Within this range a maker may adjust the free length; forces at lengths move with it."],
  };
}
