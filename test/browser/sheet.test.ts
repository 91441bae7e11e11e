import { expect, it } from "vitest";
import type { Brief, Design } from "../../src/model.ts";
import { sheetPage } from "../../src/report/datasheet/page.ts";
import { brief, material, spring } from "../report/fixture.ts";
import { browser } from "./own-browser.ts";

const plain: readonly [Brief, Design] = [brief, spring()];

const text = (length: number) => "long words ".repeat(length / 10).slice(0, length);

/** As much text as a brief can bring to a sheet with so many points, notes and cautions. */
function full(count: number, notes: number, cautions: Design["cautions"], cycles = 1e6): readonly [Brief, Design] {
  const point = { name: "a load point with a rather long name", length: 0.05, force: { min: 36, max: 54 } };
  const [first] = spring().points;
  const points = first ? Array.from({ length: count }, () => ({ ...first, name: point.name })) : [];
  const cyclic = { leastForce: 40, greatestForce: 110, stressAmplitude: 155e6, meanStress: 365e6 };
  const asked: Brief = {
    ...brief,
    title: text(400),
    load: { kind: "points", points: Array.from({ length: count }, () => point) },
    sweep: { ...brief.sweep, materials: [{ ...material, source: text(160) }] },
    service: { ...brief.service, set: "removed", cycles, frequency: 3, temperature: 333.15 },
    order: {
      hand: "either",
      governing: "outside",
      finish: text(60),
      drawing: text(30),
      notes: text(notes),
      quantity: 1e6,
      free: ["turns", "wire"],
    },
  };
  return [asked, spring({ points, cyclic, fatigueSafety: 1.5, cautions })];
}

/** A spring as wide as it is long, whose drawing is the tallest. */
const squat: readonly [Brief, Design] = [
  { ...brief, load: { kind: "forceAtDeflection", force: { nominal: 90, min: 80, max: 100 }, deflection: 0.01 } },
  spring({
    wireDiameter: 0.004,
    meanDiameter: 0.04,
    freeLength: 0.045,
    totalTurns: 5,
    forceAtSolid: 340,
    points: [{ name: "loaded", length: 0.035, deflection: 0.01, force: 136, stress: 300e6, shareOfDeflection: 0.4 }],
  }),
];

it.each([
  ["a plain brief", plain],
  ["a brief that says as much as large type bears", full(3, 100, ["bucklesBeforeSolid"])],
  ["a brief of six points that says all it can", full(6, 200, ["bucklesBeforeSolid", "mayTouchBore", "noGradeHolds"])],
  [
    "a brief of eight points that says all it can",
    full(8, 200, ["bucklesBeforeSolid", "mayTouchBore", "mayTouchRod", "noGradeHolds", "steepPitch"], 1e9),
  ],
  ["a squat spring", squat],
] as const)("the sheet of %s prints on one page of A4 and on one of Letter, in full width", async (_title, [asked, design]) => {
  const page = await browser.newPage();
  const messages: string[] = [];
  page.on("console", (message) => messages.push(message.text()));
  await page.setContent(await sheetPage(asked, design));
  for (const format of ["A4", "Letter"]) {
    const printed = (await page.pdf({ format })).toString("latin1");
    expect(printed.match(/\/Type\s*\/Page\b/g)?.length, format).toBe(1);
  }
  // 186 mm is what A4 leaves between the margins; a part that is wider would be printed smaller or cut.
  await page.emulateMedia({ media: "print" });
  await page.setViewportSize({ width: Math.round((186 / 25.4) * 96), height: 900 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth)).toBe(true);
  expect(messages).toEqual([]);
  await page.close();
});
