import { describe, expect, it } from "vitest";
import { readBrief } from "../../../src/brief/read.ts";
import { readText } from "../../../src/disk/files.ts";
import type { Material } from "../../../src/model.ts";
import { calculationOf } from "../../../src/report/calculation/calculation.ts";
import { calculationText } from "../../../src/report/calculation/text.ts";
import { sheetCautions } from "../../../src/report/datasheet/cautions.ts";
import { sweepTable } from "../../../src/report/terminal/sweep-table.ts";
import { sweep } from "../../../src/studies/sweep.ts";
import { shelf, written } from "../../published/run.ts";

// No relaxation of a shipped grade was read in print: a material with invented points shows format, estimate and words.
const material = (points: string) => `name: invented-steel
source: invented
class: cold drawn
density: 7850 kg/m^3
moduli: { youngsModulus: 206 GPa, shearModulus: 81.5 GPa }
strength: { constant: 1600 MPa, diameter: { min: 0.5 mm, max: 8 mm } }
temperature: { max: 160 degC }
relativeCost: 1
${points}`;

const points = `relaxation:
  source: invented, to show the format
  points:
    - { temperature: 120 degC, stress: 700 MPa, time: 48 h, loss: 4 % }
    - { temperature: 120 degC, stress: 700 MPa, time: 1000 h, loss: 6 % }
    - { temperature: 140 degC, stress: 800 MPa, time: 48 h, loss: 9 % }
`;

const briefOf = (temperature: string, safety: number) => `practice: handbook
load: { force: 200 N, deflection: 15 mm }
sweep: { wires: [iso-r20], materials: [./steel.yaml], ends: [squared-ground], turns: half }
service: { seats: guided, temperature: ${temperature} }
limits: { solidStress: { safety: ${safety} } }
`;

function spring(temperature: string, withPoints: boolean, safety = 1) {
  const path = written(briefOf(temperature, safety), { "steel.yaml": material(withPoints ? points : "") });
  const brief = readBrief(readText(path), path, shelf);
  const result = sweep(brief, { top: 1 });
  const [design] = result.designs;
  if (design === undefined) throw new Error("nothing fits");
  return { brief, result, design, steel: brief.sweep.materials[0] as Material };
}

const terminal = { width: 100, colour: false };

describe("load lost in time, of an invented material", () => {
  it("is the loss after the longest published time, and every output says after how long", () => {
    const { brief, result, design, steel } = spring("110 degC", true);
    expect(design.hot).toMatchObject({ relaxation: expect.closeTo(0.06, 12), relaxationTime: 3.6e6 });
    expect(design.cautions).not.toContain("askRelaxation");
    expect(sweepTable(result, terminal).replace(/\s+/g, " ")).toContain("of its load it loses at most 6 % after 1000 h.");
    expect(sheetCautions(brief, design, steel).join("\n")).toContain(
      "of its load it loses at most 6 % after 1000 h, by a published point",
    );
    expect(calculationText(calculationOf(brief, design), terminal)).toContain("[invented, to show the format]");
  });

  it("is not guessed from cooler points: it is asked for, with temperature and stress", () => {
    const { brief, result, design, steel } = spring("150 degC", true);
    const stress = /the percent lost at 150 °C and [\d.]+ MPa after the hours in service/;
    expect(design.hot?.relaxation).toBeNull();
    expect(design.cautions).toContain("askRelaxation");
    expect(sweepTable(result, terminal).replace(/\s+/g, " ")).toContain("ask the maker for the percent lost");
    expect(sheetCautions(brief, design, steel).join("\n")).toMatch(stress);
    expect(calculationText(calculationOf(brief, design), terminal).replace(/\s+/g, " ")).toMatch(stress);
  });

  it("is asked for where heat and stress make it matter, half way to the highest of each, and not below", () => {
    expect(spring("91 degC", false).design.cautions).toContain("askRelaxation");
    expect(spring("89 degC", false).design.cautions).not.toContain("askRelaxation");
    expect(spring("91 degC", false, 3).design.cautions).not.toContain("askRelaxation");
  });
});
