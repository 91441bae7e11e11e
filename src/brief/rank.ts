import type { Brief, MeritName } from "../model.ts";

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
