import { describe, expect, it, vi } from "vitest";
import { editBrief } from "../../src/brief/edit.ts";
import { changesSentence, savedName } from "../../src/explorer/controls/run-panel.ts";
import { answerTo, type EngineAnswer, type EngineRequest } from "../../src/explorer/session/engine.ts";
import { openSession, type Session } from "../../src/explorer/session/session.ts";
import { choiceOfKey, springKeyOf } from "../../src/explorer/session/spring-key.ts";
import { type Spring, shownOf } from "../../src/explorer/session/springs.ts";
import { pageData } from "../../src/report/page/page-data.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { read } from "../brief/reading.ts";

const TEXT = `practice: handbook
load: { force: { min: 18 N, max: 24 N }, deflection: 14 mm }
envelope:
  bore: 16 mm # drilled
  rod: 7 mm
sweep: { wires: [iso-r20], materials: [en-sh, en-sm], ends: [squared-ground], turns: half }
`;
const brief = read(TEXT);

/** A session whose runs are answered when the test says so. */
function opened(): {
  readonly session: Session;
  readonly asked: EngineRequest[];
  readonly answer: (answer: EngineAnswer) => void;
  readonly finish: (request: EngineRequest | undefined) => void;
  readonly told: () => number;
  readonly stops: () => number;
} {
  const asked: EngineRequest[] = [];
  let answer: (answer: EngineAnswer) => void = () => {};
  let stops = 0;
  const { wires, materials, ends } = brief.sweep;
  const setup = { file: "test.yaml", carried: { wires, materials, ends }, options: {} };
  const session = openSession({
    source: { text: TEXT, file: "test.yaml", options: {} },
    shown: shownOf(pageData(sweep(brief, { sample: 100 })), brief.units),
    start: (tell) => {
      answer = tell;
      return {
        run: (request) => asked.push(request),
        stop: () => stops++,
        relax: (request) => tell(answerTo("relax", setup, request)),
        notice: undefined,
      };
    },
  });
  let told = 0;
  session.listen(() => told++);
  const finish = (request: EngineRequest | undefined) => answer(answerTo("sweep", setup, request as EngineRequest));
  return { session, asked, answer, finish, told: () => told, stops: () => stops };
}

describe("a session", () => {
  it("that is stopped keeps the last run on screen, hears no late answer, and runs again when something is changed", () => {
    const { session, asked, finish, stops } = opened();
    const before = session.shown;
    session.stop();
    expect(stops()).toBe(0);
    session.put("envelope.bore", "15 mm");
    session.stop();
    expect([stops(), session.busy, session.stopped]).toEqual([1, false, true]);
    finish(asked[0]);
    expect(session.shown).toBe(before);
    expect(session.textAt("envelope.bore")).toBe("15 mm");
    session.put("envelope.bore", "14 mm");
    expect([session.busy, session.stopped]).toEqual([true, false]);
    finish(asked[1]);
    expect(session.shown.brief.envelope.bore).toBe(0.014);
  });

  it("runs what is put and shows it when it is done", () => {
    const { session, asked, finish } = opened();
    const before = session.shown;
    session.put("envelope.bore", "15 mm");
    expect(session.busy).toBe(true);
    expect(session.shown).toBe(before);
    finish(asked[0]);
    expect(session.busy).toBe(false);
    expect(session.shown.brief.envelope.bore).toBe(0.015);
    expect(session.shown.result.feasible).toBe(sweep(read(session.text)).feasible);
  });

  it("shows a run that a newer one is to follow, and stays busy until that is done", () => {
    const { session, asked, finish } = opened();
    session.put("envelope.bore", "15 mm");
    session.put("envelope.bore", "14 mm");
    finish(asked[0]);
    expect(session.busy).toBe(true);
    expect(session.shown.brief.envelope.bore).toBe(0.015);
    finish(asked[1]);
    expect(session.busy).toBe(false);
    expect(session.shown.brief.envelope.bore).toBe(0.014);
  });

  it("drops an answer that comes after a newer one", () => {
    const { session, asked, finish, told } = opened();
    session.put("envelope.bore", "15 mm");
    session.put("envelope.bore", "14 mm");
    finish(asked[1]);
    const times = told();
    finish(asked[0]);
    expect(session.shown.brief.envelope.bore).toBe(0.014);
    expect(told()).toBe(times);
  });

  it("says what is wrong at its key in the reader's own words, and keeps the last good run", () => {
    const { session, asked, finish } = opened();
    session.put("envelope.bore", "15 mm");
    finish(asked[0]);
    session.put("envelope.bore", "0,65 in");
    finish(asked[1]);
    expect(session.problems).toEqual(["envelope.bore: 0,65 in has a comma in its number; write 0.65 in"]);
    expect(session.problemAt("envelope.bore")).toBe("0,65 in has a comma in its number; write 0.65 in");
    expect(session.problemAt("envelope.rod")).toBeUndefined();
    expect(session.shown.brief.envelope.bore).toBe(0.015);
    session.put("envelope.bore", "14 mm");
    finish(asked[2]);
    expect(session.problems).toEqual([]);
  });

  it("does not tell the problems of a text that is gone", () => {
    const { session, asked, finish } = opened();
    session.put("envelope.bore", "abc");
    session.put("envelope.bore", "14 mm");
    finish(asked[0]);
    expect(session.problems).toEqual([]);
    expect(session.busy).toBe(true);
  });

  it("says that a name is not carried, and which are", () => {
    const { session, asked, finish } = opened();
    session.put("sweep.materials", ["astm-a228"]);
    finish(asked[0]);
    expect(session.problems[0]).toContain('this page carries no material "astm-a228"; it carries en-sh, en-sm');
  });

  it("knows what differs from the brief as asked, and brings its bytes back", () => {
    const { session, asked } = opened();
    session.put("envelope.bore", "15 mm");
    session.put("limits.solidStress.safety", "1.3");
    expect(session.changedKeys).toEqual(["envelope.bore", "limits.solidStress.safety"]);
    expect(session.textAt("envelope.bore")).toBe("15 mm");
    expect(session.askedAt("envelope.bore")).toBe("16 mm");
    expect(changesSentence(session)).toBe(
      "Changed from the brief: bore 15 mm instead of 16 mm; solid stress, safety 1.3, where the brief is silent.",
    );
    session.asAsked();
    expect(session.text).toBe(TEXT);
    expect(changesSentence(session)).toBe("As the brief asks: nothing is changed.");
    expect(asked.at(-1)?.text).toBe(TEXT);
  });

  it("brings the bytes back as well where every value is put back alone", () => {
    const { session } = opened();
    session.put("limits.solidStress.safety", "1.3");
    session.put("sweep.materials", ["en-sh"]);
    session.put("envelope.rod", undefined);
    for (const key of session.changedKeys) session.putBack(key);
    expect(session.text).toBe(TEXT);
  });

  it("shows other units without another run, and keeps them over the next", () => {
    const { session, asked, finish } = opened();
    const mass = session.shown.springs[0]?.design.mass;
    session.useUnits({ length: "in", force: "lbf" });
    expect(asked).toEqual([]);
    expect(session.shown.brief.units.length).toBe("in");
    expect(session.shown.springs[0]?.design.mass).toBe(mass);
    session.put("envelope.bore", "15 mm");
    finish(asked[0]);
    expect(session.shown.brief.units.length).toBe("in");
    expect(session.shown.result.brief).toBe(session.shown.brief);
  });

  it("runs the front of other axes", () => {
    const { session, asked, finish } = opened();
    session.useAxes(["mass", "solidSafety"]);
    finish(asked[0]);
    const { frontAxes, front } = session.shown.result;
    expect(frontAxes).toEqual(["mass", "solidSafety"]);
    expect(front).toEqual(sweep(brief, { frontAxes }).front);
  });

  it("prices the limits of each run once that is wanted", () => {
    vi.useFakeTimers();
    const { session, asked, finish } = opened();
    expect(session.relaxed).toBeUndefined();
    session.wantRelaxed();
    vi.runAllTimers();
    expect(session.relaxed?.feasible).toBe(session.shown.result.feasible);
    session.put("envelope.bore", "15 mm");
    finish(asked[0]);
    expect(session.relaxed).toBeUndefined();
    vi.runAllTimers();
    expect(session.relaxed?.brief.envelope.bore).toBe(0.015);
    vi.useRealTimers();
  });

  it("asks for the kept spring in every run that follows", () => {
    const { session, asked } = opened();
    const spring = session.shown.springs.at(-1);
    session.keep(spring);
    session.put("envelope.rod", "6 mm");
    expect(asked[0]?.kept).toMatchObject({ ends: "squared-ground", meanDiameter: spring?.choice.meanDiameter });
    session.keep(undefined);
    session.put("envelope.rod", "5 mm");
    expect(asked[1]).not.toHaveProperty("kept");
  });
});

describe("a kept spring", () => {
  const all = shownOf(pageData(sweep(brief, { sample: 5000 })), brief.units).springs;
  const kept = springKeyOf((all.at(-1) as Spring).choice, brief);
  const edited = (key: string, text: string | undefined) => read(editBrief(TEXT, key, text));

  it("is drawn where it fits, though the sample holds it no more", () => {
    const few = sweep(edited("envelope.rod", "6 mm"), { sample: 3, top: 1 });
    const drawn = pageData(few).springs.meanDiameter;
    const lost = all.find(({ choice }) => !drawn.includes(choice.meanDiameter)) as Spring;
    const choice = choiceOfKey(springKeyOf(lost.choice, brief), few.brief);
    expect(pageData(few, choice && [choice]).springs.meanDiameter).toContain(lost.choice.meanDiameter);
  });

  it.each([
    ["breaks a limit", "envelope.bore", "8.5 mm"],
    ["is between the steps of diameter", "sweep.meanDiameter.step", "0.77 mm"],
    ["is between the steps of turns", "sweep.turns", "whole"],
    ["would have its diameter found by the walk", "sweep.meanDiameter", "exact"],
  ])("is not drawn where it %s", (_, key, text) => {
    const half = all.find(({ choice }) => choice.totalTurns % 1 === 0.5) as Spring;
    expect(choiceOfKey(springKeyOf(half.choice, brief), edited(key, text))).toBeUndefined();
    expect(choiceOfKey(springKeyOf(half.choice, brief), brief)).toEqual(half.choice);
  });

  it("is not drawn where its material is not asked any more", () => {
    const other = kept.material === "en-sh" ? "en-sm" : "en-sh";
    expect(choiceOfKey(kept, read(editBrief(TEXT, "sweep.materials", [other])))).toBeUndefined();
  });
});

describe("a run of the page", () => {
  it("gives the designs, the front and the counts of the sweep, every figure alike", () => {
    const result = sweep(brief, { sample: 5000 });
    const shown = shownOf(JSON.parse(JSON.stringify(pageData(result))), brief.units);
    const { sample, ...whole } = result;
    expect(shown.result).toEqual(whole);
    expect(shown.sampled).toBe(sample?.length);
    for (const { drawn, design } of shown.springs) expect(design).toMatchObject(drawn);
  });
});

describe("the name of a saved brief", () => {
  it.each([
    ["latch.yaml", "latch-changed.yaml"],
    ["latch.json", "latch-changed.json"],
    ["latch", "latch-changed.yaml"],
    ["v1.2.yml", "v1.2-changed.yml"],
  ])("of %s is %s", (file, saved) => {
    expect(savedName(file)).toBe(saved);
  });
});
