import { describe, expect, it } from "vitest";
import { REJECTION_ORDER } from "../../src/constrain/rejection-counts.ts";
import { practices } from "../../src/practice/practices.ts";
import { limitWords } from "../../src/report/text/labels.ts";
import { formulas } from "./docstring.ts";
import { limitsPaper } from "./limits-paper.ts";
import { textOf, underHeading } from "./tree.ts";

/**
 * Formulas that no limit judges by: what a spring costs is not limited, nor its modulus when hot, nor its growth before solid, and
 * a power is no law of springs.
 */
const OF_NO_LIMIT = ["costProxy", "modulusAtTemperature", "pitchAngle", "bandOf", "outsideDiameterPressed", "power"];

describe("the paper on limits", () => {
  const paper = textOf("reports/limits.md");
  const unwrapped = paper.replaceAll(/\s+/g, " ");

  it("is what the code says; npm run docs writes it", () => {
    expect(paper).toBe(limitsPaper());
  });

  it("has a part for every limit, in order, with what it holds and what raises it", () => {
    const headings = [...paper.matchAll(/^## .*: `(\w+)`$/gm)].map(([, name]) => name);
    expect(headings).toEqual([...REJECTION_ORDER]);
    for (const { sentence, raise } of Object.values(limitWords)) {
      expect(unwrapped).toContain(sentence);
      expect(unwrapped).toContain(raise);
    }
  });

  it("shows every formula once with its range and source, but those that no limit judges by", () => {
    for (const [name, { equations, range, source }] of formulas) {
      const times = (text: string) => paper.split(text).length - 1;
      if (OF_NO_LIMIT.includes(name)) continue;
      for (const equation of equations) expect(times(`\n${equation}\n`), `${name}: ${equation}`).toBe(1);
      expect(unwrapped, name).toContain(`- range: ${range} - source: ${source}`);
    }
    expect([...formulas.keys()]).toEqual(expect.arrayContaining(OF_NO_LIMIT));
  });

  it("gives what each practice chooses with its source", () => {
    const surge = underHeading(paper, "## Surge: `surge`");
    for (const { name, surgeMultiple } of Object.values(practices)) {
      expect(surge).toContain(`| \`${name}\` | multiple | ${surgeMultiple.value} | ${surgeMultiple.source} |`);
    }
  });
});
