import { describe, expect, it } from "vitest";
import type { Brief, Design } from "../../../src/model.ts";
import { type Facts, springFacts } from "../../../src/report/page/spring-facts.ts";
import { brief, spring } from "../fixture.ts";

const cyclic = { leastForce: 40, greatestForce: 110, stressAmplitude: 155e6, meanStress: 365e6 };
const judged: Brief = {
  ...brief,
  service: { ...brief.service, cycles: 1e7, surface: "peened" },
  limits: { ...brief.limits, fatigue: { safety: 1.3, line: "gerber" } },
};
const hot: NonNullable<Design["hot"]> = {
  temperature: 373.15,
  shearModulus: 79e9,
  youngsModulus: 200e9,
  rate: 3000,
  forces: [24, 60],
  modulusSource: "a data sheet",
  relaxation: 0.05,
  relaxationTime: 48 * 3600,
};

function under(heading: string, asked: Brief, design: Design): Facts | undefined {
  return springFacts(asked, design).find((facts) => facts.heading === heading);
}

describe("figures of a spring in its duty", () => {
  it("in static duty, cold, with no operation weighed, only the free length and the maker's tolerances are told", () => {
    expect(springFacts(brief, spring()).map(({ heading }) => heading)).toEqual(["Free length", "Manufacturing tolerances"]);
    expect(under("Free length", brief, spring({ freeLength: 0.058 }))?.entries).toContainEqual([
      "every limit holds at",
      "57 to 59 mm",
    ]);
    const fixed = spring({ freeLengthRange: { min: 0.058, max: 0.058 } });
    expect(springFacts(brief, fixed).map(({ heading }) => heading)).toEqual(["Manufacturing tolerances"]);
  });

  it("cyclic duty names the line, the surface and the safety asked", () => {
    const facts = under("Cyclic duty", judged, spring({ cyclic, fatigueSafety: 1.42 }));
    expect(facts?.entries).toContainEqual(["fatigue safety", "1.42"]);
    expect(facts?.notes.join(" ")).toMatch(/peened, by a Gerber line; at least 1\.3 is asked\./);
  });

  it("the standard's practice names the material's own data with their source", () => {
    const fatigue = { source: "a test report", cycles: 1e7 };
    const [material] = brief.sweep.materials;
    const asked: Brief = { ...judged, practice: "en13906", sweep: { ...brief.sweep, materials: [{ ...material!, fatigue }] } };
    expect(under("Cyclic duty", asked, spring({ cyclic, fatigueSafety: 1.1 }))?.notes.join(" ")).toContain(
      "the diagram of the material's own data (a test report), peened",
    );
  });

  it("fatigue that was not judged is said so in place of a safety", () => {
    const facts = under("Cyclic duty", { ...judged, limits: brief.limits }, spring({ cyclic }));
    expect(facts?.entries).toContainEqual(["fatigue safety", "not judged"]);
    expect(facts?.notes.join(" ")).toContain("nothing here says that the spring lasts");
  });

  it("heat puts every figure beside that as tested", () => {
    const facts = under("At 100 °C", brief, spring({ hot }));
    expect(facts?.table?.rows.at(-1)).toEqual(["force at open", expect.stringMatching(/ N$/), "60 N"]);
    expect(facts?.entries).toEqual([["load lost in time (relaxation)", "at most 5 % after 48 h"]]);
    expect(facts?.notes[0]).toBe("How the moduli fall: a data sheet.");
  });

  it("what is not known of a material in heat is said to be not known, and no figure stands for it", () => {
    const { relaxationTime: _, ...timeless } = hot;
    const unknown = {
      ...timeless,
      modulusSource: null,
      shearModulus: null,
      youngsModulus: null,
      rate: null,
      forces: [null, null],
      relaxation: null,
    };
    const facts = under("At 100 °C", brief, spring({ hot: unknown }));
    expect(facts?.table).toBeUndefined();
    expect(facts?.entries).toEqual([
      [
        "load lost in time (relaxation)",
        expect.stringMatching(
          /^not known for this material: ask for the percent lost at 100 °C and \d.* MPa after the hours in service$/,
        ),
      ],
    ]);
    expect(facts?.notes).toEqual(["How the moduli fall with heat is not known for this material."]);
  });

  it("tolerances tell forces by grade and at worst, room that lacks, and that no grade holds", () => {
    const tolerance: Design["tolerance"] = {
      grade: 2,
      wireDiameter: 0.00003,
      wireSource: "the material's standard",
      coilDiameter: 0.00035,
      freeLength: null,
      points: [{ name: "closed", force: 4, leastForce: 40, greatestForce: 52 }],
      coarsestGrade: null,
      boreRoom: -0.0002,
    };
    const facts = under("Manufacturing tolerances", { ...brief, practice: "en13906" }, spring({ tolerance }));
    expect(facts?.entries).toEqual([
      ["wire diameter", "± 0.03 mm"],
      ["coil diameter", "± 0.35 mm"],
      ["free length", "not in its tables"],
      ["left in the bore beyond its clearance", "0.2 mm too little"],
      ["coarsest grade that keeps every force", "none"],
    ]);
    expect(facts?.table).toEqual({ heads: ["by grade", "worst case"], rows: [["force at closed", "± 4 N", "40 N to 52 N"]] });
  });

  it("tolerances that no table gives are not said to hold or to fail", () => {
    const tolerance: Design["tolerance"] = { ...spring().tolerance, coarsestGrade: "notKnown" };
    const facts = under("Manufacturing tolerances", brief, spring({ tolerance }));
    expect(facts?.entries.at(-1)).toEqual(["coarsest grade that keeps every force", "not in its tables"]);
  });

  it("the parts of the cost are those that weigh something, and add up", () => {
    const costParts = { wire: 0.04, grind: 0.02, set: 0, peen: 0, relieve: 0.005 };
    expect(under("Parts of the relative cost", brief, spring({ costParts, relativeCost: 0.065 }))?.entries).toEqual([
      ["wire", "0.04"],
      ["grinding the ends", "0.02"],
      ["relieving stress", "0.005"],
      ["together", "0.065"],
    ]);
  });
});
