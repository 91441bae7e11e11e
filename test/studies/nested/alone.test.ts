import { describe, expect, it } from "vitest";
import type { Brief } from "../../../src/model.ts";
import { pairsJson } from "../../../src/report/files/json.ts";
import { pairsPage } from "../../../src/report/page/pairs-page.ts";
import { pairsTable } from "../../../src/report/terminal/pairs-table.ts";
import { aloneSentence } from "../../../src/report/text/pairs.ts";
import { nestedSweep } from "../../../src/studies/nested.ts";
import { sweep } from "../../../src/studies/sweep.ts";
import { read } from "../../brief/reading.ts";
import { demo } from "./briefs.ts";

/** The demo's ram with a tenth of its forces, which one spring bears. */
const light = (rank = "mass", bore = 40): Brief =>
  read(`practice: handbook
nested: 2
load:
  points: [{ name: raised, length: 75 mm, force: 100 N ± 10 % }, { name: pressed, length: 60 mm, force: 250 N ± 10 % }]
envelope: { bore: ${bore} mm, rod: 8 mm, clearance: 5 % }
sweep: { wires: [iso-r20], materials: [en-sh], ends: [squared-ground], turns: half }
service: { seats: guided }
rank: ${rank}
`);
const oneOf = ({ nested: _, ...brief }: Brief): Brief => brief;

describe("one spring alone, beside nested pairs", () => {
  it("is the best that answers the whole brief, as a sweep without `nested` finds it", () => {
    const brief = light();
    const { alone } = nestedSweep(brief);
    const [best] = sweep(oneOf(brief)).designs;
    expect(alone).toEqual(best);
  });

  it("is said to be better where it is, by the first figure that ranks", () => {
    const result = nestedSweep(light());
    const [pair] = result.pairs;
    expect(result.alone?.mass).toBeLessThan(pair?.mass as number);
    const [alone, both] = [result.alone?.mass, pair?.mass].map((mass) => `${Number((1000 * (mass as number)).toPrecision(4))} g`);
    const sentence = aloneSentence(result);
    expect(sentence).toContain(`One spring alone is better: a mass of ${alone}, where the best pair has ${both}.`);
    expect(pairsTable(result, { width: 80, colour: false }).replace(/\s+/g, " ")).toContain(sentence);
    expect(JSON.parse(pairsJson(result)).alone.mass).toBe(result.alone?.mass);
  });

  it("stands in the page too", async () => {
    const result = nestedSweep(light());
    expect(await pairsPage(result, "1;")).toContain("One spring alone is better: a mass of");
  });

  it("is said to fit without being better where a pair has the better figure", () => {
    const result = nestedSweep(light("solidSafety"));
    const worse = { ...result, alone: { ...(result.alone as NonNullable<typeof result.alone>), solidSafety: 0.1 } };
    expect(aloneSentence(worse)).toMatch(/^One spring alone fits too, with a safety at solid of 0\.1, where the best pair has /);
    expect(aloneSentence({ ...worse, alone: { ...worse.alone, solidSafety: 99 } })).toMatch(/^One spring alone is better: /);
  });

  it("is said where no pair fits, and to be missing where no spring bears the load", () => {
    const result = nestedSweep(light());
    expect(aloneSentence({ ...result, pairs: [], pairsFit: 0 })).toMatch(/^One spring alone fits, with a mass of .* g\.$/);
    expect(aloneSentence(nestedSweep(demo))).toBe("No spring alone fits this brief.");
  });
});
