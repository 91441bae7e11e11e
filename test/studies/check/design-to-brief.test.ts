import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { designToBrief } from "../../../src/brief/design-to-brief.ts";
import { readBrief, readCheckBrief } from "../../../src/brief/read.ts";
import { writeBrief } from "../../../src/brief/write.ts";
import { lookupOn } from "../../../src/catalog/find.ts";
import { readShelf, readTextBeside } from "../../../src/disk/files.ts";
import type { Brief, CheckResult, Design, LimitName } from "../../../src/model.ts";
import { check } from "../../../src/studies/check.ts";
import { sweep } from "../../../src/studies/sweep.ts";
import { briefs, CASES } from "../../property/briefs.ts";

/** Every number of an object, by its path. */
function numbersOf(thing: unknown, path = ""): [string, number][] {
  if (typeof thing === "number") return [[path, thing]];
  if (typeof thing !== "object" || thing === null) return [];
  return Object.entries(thing).flatMap(([key, inner]) => numbersOf(inner, `${path}.${key}`));
}

/** Limits that a sweep satisfies by construction, so that it reports 0, and a check judges. */
function byConstruction({ load, envelope }: Brief): readonly LimitName[] {
  const shortest = load.kind === "forceAtDeflection" || load.kind === "rateAndLargestForce";
  return ["rate", ...(shortest && envelope.freeLength?.min !== undefined ? (["clash"] as const) : [])];
}

function expectSame(judged: CheckResult, swept: Design, brief: Brief): void {
  const { rank: _, margins, series: __, ...figures } = swept;
  const { margins: judgedMargins, ...judgedFigures } = judged.design;
  const again = new Map(numbersOf(judgedFigures));
  for (const [path, value] of numbersOf(figures)) {
    const other = again.get(path) as number;
    expect(Math.abs(other - value), `${path}: ${other} for ${value}`).toBeLessThanOrEqual(1e-9 * Math.max(Math.abs(value), 1e-3));
  }
  const satisfied = byConstruction(brief);
  for (const [limit, margin] of Object.entries(margins) as [LimitName, number][]) {
    if (!satisfied.includes(limit)) expect(Math.abs((judgedMargins[limit] as number) - margin), limit).toBeLessThanOrEqual(1e-9);
    else expect(judgedMargins[limit], limit).toBeGreaterThanOrEqual(-1e-9);
  }
}

describe("a pinned design passes the check, with the figures and margins of the sweep", () => {
  it.each(CASES)("of $load, turns that follow: $turnsAny", ({ load, turnsAny }) => {
    let pinned = 0;
    fc.assert(
      fc.property(briefs(load, turnsAny), (brief) => {
        for (const design of sweep(brief, { top: 3 }).designs) {
          const judged = check(designToBrief(brief, design));
          expect(judged.disagreements).toEqual([]);
          expect(judged.entries.filter(({ passes }) => !passes)).toEqual([]);
          expectSame(judged, design, brief);
          pinned++;
        }
      }),
      { seed: 20261125, numRuns: 25 },
    );
    expect(pinned).toBeGreaterThan(0);
  });

  const lookup = lookupOn(readShelf(), readTextBeside);
  it.each([
    "../../../reports/latch-plunger",
    "../../../reports/vent-flap",
    ...["points", "rate-and-point", "rate-window", "force-at-deflection"].map((name) => `../../brief/contract/${name}`),
  ])("also through the text of %s, where another program reads it", (name) => {
    const path = fileURLToPath(new URL(`${name}.yaml`, import.meta.url));
    const brief = readBrief(readFileSync(path, "utf8"), path, lookup);
    const designs = sweep(brief, { top: 4 }).designs;
    expect(designs.length).toBeGreaterThan(0);
    for (const design of designs) {
      const judged = check(readCheckBrief(writeBrief(designToBrief(brief, design)), path, lookup));
      expect(judged.passes).toBe(true);
      expectSame(judged, design, brief);
    }
  });
});
