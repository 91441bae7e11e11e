import { describe, expect, it } from "vitest";
import { LIMIT_ORDER } from "../../../src/constrain/limits/limits.ts";
import { askedSentence } from "../../../src/report/text/brief-summary.ts";
import { figureWords, limitWords } from "../../../src/report/text/labels.ts";
import { brief, spring } from "../fixture.ts";

describe("words", () => {
  it("every figure of a design has a label and a sentence", () => {
    const groups = ["cyclic", "hot"];
    const figures = Object.entries(spring()).filter(
      ([name, value]) => typeof value === "number" || (value === null && !groups.includes(name)),
    );
    expect(figures.length).toBeGreaterThan(25);
    for (const [name] of figures) expect(figureWords, name).toHaveProperty(name);
  });

  it("every limit that a candidate can fall at has words, in the order in which it falls", () => {
    const worded = Object.keys(limitWords);
    expect(worded.filter((name) => (LIMIT_ORDER as readonly string[]).includes(name))).toEqual([...LIMIT_ORDER]);
  });

  it("every sentence ends with a full stop and says what raises the margin", () => {
    for (const { sentence, raise } of Object.values(limitWords)) {
      expect(sentence).toMatch(/^[A-Z].*\.$/);
      expect(raise).toMatch(/^[A-Z].*\.$/);
    }
  });
});

describe("what was asked, in one sentence", () => {
  it("names loads, envelope, clearance and practice in the brief's units", () => {
    expect(askedSentence(brief)).toBe(
      "36 N to 54 N at 50 mm and 95 N to 125 N at 38 mm, in a bore of 24 mm, over a rod of 11 mm, " +
        "with a diametral clearance of 5 %, free length at most 70 mm; judged by handbook practice.",
    );
  });

  it("says that no clearance is asked where a bore or rod has none", () => {
    expect(askedSentence({ ...brief, envelope: { bore: 0.024 } })).toContain("in a bore of 24 mm, with no clearance asked;");
    expect(askedSentence({ ...brief, envelope: {} })).not.toContain("clearance");
  });

  it("gives a tolerance as its nominal and half width", () => {
    const load = { kind: "forceAtDeflection", force: { nominal: 20, min: 18, max: 22 }, deflection: 0.05 } as const;
    expect(askedSentence({ ...brief, load, envelope: {} })).toMatch(/^20 N ± 2 N at a deflection of 50 mm;/);
  });

  it("states one-sided rates as at least and at most", () => {
    const load = { kind: "rateAndLargestForce", rate: { min: 5000 }, largestForce: 100 } as const;
    expect(askedSentence({ ...brief, load, envelope: {} })).toMatch(
      /^A rate of at least 5 N\/mm and a largest working force of 100 N;/,
    );
  });
});
