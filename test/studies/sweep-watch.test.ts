import { describe, expect, it } from "vitest";
import { readBrief } from "../../src/brief/read.ts";
import type { SweepProgress } from "../../src/model.ts";
import { resultJson } from "../../src/report/files/json.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { lookup } from "../hostile/answer.ts";

const brief = readBrief(
  `practice: handbook
load: { points: [{ length: 46 mm, force: 20 N ± 4 N }, { length: 32 mm, force: 48 N ± 6 N }] }
sweep: { wires: [iso-r20], materials: [astm-a228, astm-a229], ends: [squared-ground] }
service: { scatter: { draws: 5000, turns: 0.1, modulus: 2 % } }
`,
  "watched.yaml",
  lookup,
);

describe("a sweep that is followed", () => {
  it("says how far it is with one thing after the other, and finds what an unwatched one finds", () => {
    const said: SweepProgress[] = [];
    const result = sweep(brief, { nearest: true, onProgress: (progress) => said.push(progress) });
    expect(resultJson(result)).toBe(resultJson(sweep(brief, { nearest: true })));
    const works = said.map(({ work }) => work);
    expect([...new Set(works)]).toEqual(["walk", "draw", "nearest"]);
    const walking = said.filter(({ work }) => work === "walk");
    expect(walking.length).toBeGreaterThan(30);
    expect(walking.map(({ share }) => share)).toEqual(walking.map(({ share }) => share).sort((a, b) => a - b));
    expect(walking.at(-1)).toEqual({ work: "walk", share: 1, counted: result.walked });
    const drawing = said.filter(({ work }) => work === "draw").map(({ share }) => share);
    expect(drawing.every((share) => share > 0 && share <= 1)).toBe(true);
  });

  it.each(["walk", "draw", "nearest"] as const)("ends with the reason of its signal while it is at: %s", (work) => {
    const stop = new AbortController();
    const reason = new Error("enough");
    const after: SweepProgress[] = [];
    const onProgress = (progress: SweepProgress) => {
      if (stop.signal.aborted) after.push(progress);
      if (progress.work === work) stop.abort(reason);
    };
    expect(() => sweep(brief, { nearest: true, signal: stop.signal, onProgress })).toThrow(reason);
    expect(after).toEqual([]);
  });

  it("does not begin where its signal is aborted before", () => {
    expect(() => sweep(brief, { signal: AbortSignal.abort() })).toThrow(/abort/i);
  });
});
