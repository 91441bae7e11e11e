import { describe, expect, it } from "vitest";
import type { Brief, Design, ScatterFigures, SweepResult } from "../../../src/model.ts";
import { designsCsv } from "../../../src/report/files/csv.ts";
import { springFacts } from "../../../src/report/page/spring-facts.ts";
import { columnsOf, tableLines } from "../../../src/report/terminal/ranked-columns.ts";
import { sweepTable } from "../../../src/report/terminal/sweep-table.ts";
import { rankedAgainWords, scatterSentences, yieldWords } from "../../../src/report/text/yield.ts";
import { brief, result, spring } from "../fixture.ts";

const spread = { mean: 57, standardDeviation: 1.234, least: 52, greatest: 61 };
const figures: ScatterFigures = {
  share: 0.815,
  standardError: 0.0122784,
  draws: 1000,
  falls: { load: 150, solidStress: 35 },
  rate: { mean: 3000, standardDeviation: 45, least: 2900, greatest: 3100 },
  forces: [{ name: "open", ...spread, below: 120, above: 30 }],
  tolerances: { wireDiameter: 2e-5, coilDiameter: 3e-4, turns: 0.1, freeLength: 5e-4, modulus: 0.02 },
};
const drawn: Brief = {
  ...brief,
  service: { ...brief.service, scatter: { draws: 1000, shape: "uniform", seed: 4, grade: 2, turns: 0.1, modulus: 0.02 } },
};
const withScatter = (scatter: ScatterFigures | null): Design => spring({ scatter });
const inUnits = drawn.units;

describe("words for a yield", () => {
  it("give the share with what it is of and its standard error, and claim no share where all or none passed", () => {
    expect(yieldWords(figures, inUnits)).toBe("81.5 % of 1,000 drawn (standard error 1.2 %)");
    expect(yieldWords({ ...figures, share: 1, standardError: 0 }, inUnits)).toBe("all of 1,000 drawn");
    expect(yieldWords({ ...figures, share: 0, standardError: 0 }, inUnits)).toBe("none of 1,000 drawn");
  });

  it("say where the others fall, how forces and rate are spread, and how springs were drawn", () => {
    const said = scatterSentences(drawn, withScatter(figures)).join("\n");
    expect(said).toMatch(/the others fall first at force windows 15 %, solid stress 3\.5 %\./);
    expect(said).toMatch(/force at open 57 N, standard deviation 1\.23 N; rate 3 N\/mm, standard deviation 0\.045 N\/mm/);
    expect(said).toMatch(/wire ± 0\.02 mm, mean diameter ± 0\.3 mm, turns ± 0\.1, free length ± 0\.5 mm, modulus ± 2 %: uniform/);
    expect(said).toMatch(/each by itself, seed 4\./);
    expect(said).not.toMatch(/without a window/);
  });

  it("say that a force without a window holds none", () => {
    const { below, above, ...exact } = figures.forces[0]!;
    expect(scatterSentences(drawn, withScatter({ ...figures, forces: [exact] })).join()).toMatch(/without a window holds no/);
  });

  it("say nothing unasked, and that none were drawn where tables do not reach", () => {
    expect(scatterSentences(brief, spring())).toEqual([]);
    expect(scatterSentences(drawn, withScatter(null)).join()).toMatch(/^Yield: not drawn.*state them in service\.scatter\.$/);
  });

  it("tell a ranking by yield from one of all that fit", () => {
    const ranked = { ...result, brief: drawn, ranksAgain: 200, feasible: 900 };
    expect(rankedAgainWords(ranked)).toMatch(
      /among 200 springs, the best by mass.*; one of the others may have a larger yield\.$/,
    );
    expect(rankedAgainWords({ ...ranked, feasible: 200 })).toMatch(/: all that fit\.$/);
    expect(rankedAgainWords(result)).toBe("");
  });
});

describe("facts of a spring about which springs are drawn", () => {
  const under = (design: Design) => springFacts(drawn, design).find(({ heading }) => heading === "Variation");

  it("are the yield, what falls where, and the spread of forces and rate", () => {
    const facts = under(withScatter(figures));
    expect(facts?.entries).toContainEqual(["fall first at solid stress", "35"]);
    expect(facts?.table?.rows).toEqual([
      ["force at open", "57 N", "1.23 N", "52 N to 61 N"],
      ["rate", "3 N/mm", "0.045 N/mm", "2.9 N/mm to 3.1 N/mm"],
    ]);
  });

  it("are none unasked, and one sentence where tables do not reach", () => {
    expect(under(spring())).toBeUndefined();
    expect(under(withScatter(null))?.entries).toEqual([["yield", expect.stringMatching(/^not drawn/)]]);
  });
});

describe("a column of yields", () => {
  const sweepOf = (...designs: Design[]): SweepResult => ({ ...result, brief: drawn, designs });
  const one = withScatter(figures);
  const none = { ...withScatter(null), rank: 2, wire: "W20" };

  it("stands in the table and in CSV, with a dash or an empty cell where none were drawn", () => {
    const [heads, rows] = tableLines(columnsOf(sweepOf(one, none), 120).columns);
    expect(heads.map((line) => line.split(/ +/).at(-1))).toEqual(expect.arrayContaining(["yield", "%"]));
    expect(rows.map((line) => line.split(/ +/).at(-1))).toEqual(["81.5", "–"]);
    const [head = "", ...lines] = designsCsv(sweepOf(one, none)).trimEnd().split("\r\n");
    const place = head.split(",").indexOf("yield (%)");
    expect(lines.map((line) => line.split(",").slice(place, place + 2))).toEqual([
      ["81.5", "1.22784"],
      ["", ""],
    ]);
  });

  it("keeps within a narrow terminal, for one spring too", () => {
    for (const shown of [sweepOf(one), sweepOf(one, none)]) {
      for (const width of [80, 100]) {
        const lines = sweepTable(shown, { width, colour: false }).split("\n");
        expect(lines.filter((line) => line.length > width)).toEqual([]);
        expect(lines.some((line) => /yield$/.test(line))).toBe(true);
      }
    }
  });

  it("is not there unasked", () => {
    expect(designsCsv(result)).not.toMatch(/yield/);
    expect(sweepTable(result, { width: 100, colour: false })).not.toMatch(/yield/i);
  });
});
