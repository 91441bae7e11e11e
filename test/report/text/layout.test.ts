import { describe, expect, it } from "vitest";
import { columnNumbers } from "../../../src/report/text/layout.ts";

const metric = { length: "mm", force: "N" } as const;

describe("numbers of a column", () => {
  it.each<[(number | null)[], string[], string]>([
    [[0.0158, 0.00962], ["15.80", "9.62"], "four digits in the largest"],
    [[0.002, 0.0022], ["2.0", "2.2"], "no nought that every one ends in"],
    [[0.002, 0.003], ["2", "3"], "no decimals where none is needed"],
    [[0.05800000000000001], ["58"], "no binary noise"],
    [[null, 0.002], ["–", "2"], "a dash for what does not exist"],
  ])("%j mm become %j: %s", (values, texts) => {
    expect(columnNumbers(values, "length", metric)).toEqual(texts);
  });
});
