import { describe, expect, it } from "vitest";
import { readBrief, readCheckBrief } from "../../src/brief/read.ts";
import { lookupOn } from "../../src/catalog/find.ts";
import { isSold } from "../../src/constrain/candidate/wire-properties.ts";
import { readShelf } from "../../src/disk/files.ts";
import { check } from "../../src/studies/check.ts";
import { sweep } from "../../src/studies/sweep.ts";

/** A material and two racks of one's own, all invented. */
const files: Readonly<Record<string, string>> = {
  "./shop.yaml": `name: shop
source: invented
class: cold drawn
density: 7850 kg/m^3
moduli: { youngsModulus: 206 GPa, shearModulus: 80 GPa }
strength: { constant: 1800 MPa, diameter: { min: 0.5 mm, max: 6 mm } }
temperature: { max: 100 degC }
relativeCost: 1
`,
  "./rack.csv": "label,diameter,materials\nA,1 mm,en-sm\nB,2 mm,en-sm shop\n",
  "./any.csv": "label,diameter\nA,1 mm\nB,2 mm\n",
};
const wire = (series: string, sold?: string) => {
  const texts = { ...files, "./shop.yaml": `${files["./shop.yaml"]}${sold === undefined ? "" : `series: [${sold}]\n`}` };
  const lookup = lookupOn(readShelf(), (file) => ({ file, text: texts[file as keyof typeof texts] as string }));
  const brief = readBrief(
    `practice: handbook
load: { force: 30 N, deflection: 10 mm }
sweep: { wires: [${series}], materials: [en-sm, ./shop.yaml], ends: [squared] }
`,
    "own.yaml",
    lookup,
  );
  const { materials, wires } = brief.sweep;
  return {
    brief,
    lookup,
    /** Labels of the wires that are sold in each material. */
    labels: materials.map((material) => (wires[0]?.wires ?? []).filter((one) => isSold(one, material)).map(({ label }) => label)),
  };
};

describe("a material file of one's own", () => {
  it("is drawn in every shipped series, whatever that is said to be sold in", () => {
    const { labels, brief } = wire("en-10270");
    expect(labels[1]).toEqual(brief.sweep.wires[0]?.wires.map(({ label }) => label));
    expect(wire("us-music").labels).toEqual([[], expect.arrayContaining(["20", "45"])]);
    expect(sweep(wire("us-music").brief).feasible).toBeGreaterThan(0);
  });

  it("is held to the rows of a stock of one's own that says what it holds", () => {
    expect(wire("./rack.csv").labels).toEqual([["A", "B"], ["B"]]);
    expect(wire("./any.csv").labels).toEqual([
      ["A", "B"],
      ["A", "B"],
    ]);
  });

  it("says otherwise by `series`, which leaves other materials as they were", () => {
    expect(wire("en-10270", "us-music, ./rack.csv").labels[1]).toEqual([]);
    expect(wire("en-10270", "us-music").labels[0]).toEqual(wire("en-10270").labels[0]);
    expect(wire("iso-r20", "us-music").labels[1]).toEqual([]);
    expect(wire("iso-r20", "us-music").labels[0]?.length).toBeGreaterThan(10);
    expect(wire("./rack.csv", "us-music, ./rack.csv").labels[1]).toEqual(["A", "B"]);
  });

  it("is judged by a check alike", () => {
    const notes = (series: string, sold?: string) => {
      const { lookup } = wire(series, sold);
      const text = `practice: handbook
load: { force: { min: 1 N, max: 99 N }, deflection: 5 mm }
design: { wire: us-music 20, material: ./shop.yaml, ends: squared, meanDiameter: 9 mm, totalTurns: 10 }
`;
      return check(readCheckBrief(text, "own.yaml", lookup)).notes;
    };
    expect(notes("us-music")).not.toContain("notSold");
    expect(notes("us-music", "en-10270")).toContain("notSold");
  });
});
