import { describe, expect, it } from "vitest";
import type { Material } from "../../../src/model.ts";
import { sheetCautions } from "../../../src/report/datasheet/cautions.ts";
import { brief, material, spring } from "../fixture.ts";

const cautions = (changes: Partial<Material> = {}, tensileStrength = 1755e6) =>
  sheetCautions(brief, spring({ tensileStrength }), { ...material, ...changes }).join("\n");

describe("the cautions of a sheet", () => {
  it("begin with the energy stored at solid, half of force times deflection", () => {
    // by the definition of work: 100 N rising over 20 mm is 1 J, and 10 lbf rising over 2 in is 10 in·lbf
    const metric = spring({ forceAtSolid: 100, freeLength: 0.04, solidLength: 0.02 });
    expect(sheetCautions(brief, metric, material)[0]).toContain("about 1 J.");
    const inch = spring({ forceAtSolid: 10 * 4.4482216152605, freeLength: 0.1016, solidLength: 0.0508 });
    const units = { length: "in", force: "lbf" } as const;
    expect(sheetCautions({ ...brief, units }, inch, material)[0]).toContain("about 10 in·lbf.");
  });

  it("warn of hydrogen where the wire is hard steel, and nowhere else", () => {
    expect(cautions()).toMatch(/Hydrogen:.*electroplating/);
    expect(cautions({ class: "hardened and tempered" })).toContain("Hydrogen:");
    expect(cautions({ class: "austenitic" })).not.toContain("Hydrogen:");
    expect(cautions({ class: "non-ferrous" })).not.toContain("Hydrogen:");
    expect(cautions({}, 900e6)).not.toContain("Hydrogen:");
  });

  it("name the wire's highest temperature, and that loss of load in heat is not known", () => {
    const service = { ...brief.service, temperature: 333.15 };
    const hot = {
      temperature: 333.15,
      shearModulus: null,
      youngsModulus: null,
      modulusSource: null,
      rate: null,
      forces: [null, null],
    };
    expect(cautions()).toMatch(/up to 120 °C; the brief states none/);
    const unknown = sheetCautions({ ...brief, service }, spring({ hot: { ...hot, relaxation: null } }), material).join("\n");
    expect(unknown).toMatch(/ask the maker for the percent lost at 60 °C and \d.* MPa after the hours in service\./);
    const known = sheetCautions(
      { ...brief, service },
      spring({ hot: { ...hot, relaxation: 0.04, relaxationTime: 3.6e6 } }),
      material,
    ).join("\n");
    expect(known).toContain("of its load it loses at most 4 % after 1000 h, by a published point");
  });

  it("carry the design's own cautions, and what was not judged", () => {
    const service = { ...brief.service, cycles: 1e6 };
    const limits = { ...brief.limits, solidStress: "off" } as const;
    const listed = sheetCautions(
      { ...brief, service, limits },
      spring({ cautions: ["bucklesBeforeSolid"], bucklingDeflection: 0.025 }),
      material,
    ).join("\n");
    expect(listed).toContain("though not in work: at 25 mm, where work presses it 20 mm.");
    expect(listed).toContain("fatigue was not judged");
    expect(listed).toContain("No stress limit is active");
    expect(cautions()).not.toMatch(/not judged|No stress limit/);
  });

  it("warn of a life beyond that of the fatigue data, where fatigue was judged", () => {
    const asked = (cycles: number, fatigueSafety: number | null) =>
      sheetCautions({ ...brief, service: { ...brief.service, cycles } }, spring({ fatigueSafety }), material).join("\n");
    expect(asked(1e9, 1.5)).toContain("ten million");
    expect(asked(1e7, 1.5)).not.toContain("ten million");
    expect(asked(1e9, null)).not.toContain("ten million");
  });

  it("end with whom to verify it with", () => {
    expect(cautions()).toMatch(/verify with the spring maker and the governing standard\. [^\n]*$/);
  });
});
