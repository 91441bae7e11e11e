import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { materialFaults, seriesFaults } from "../../src/catalog/faults.ts";
import { readMaterial } from "../../src/catalog/materials.ts";
import { headLines } from "../../src/catalog/source-text.ts";
import { shelf, shipped } from "./shipped.ts";

const series = [...shelf.wires.keys()];
const materials = [...shelf.materials.keys()];

describe.each(series)("the shipped wire series %s", (name) => {
  const { source, wires } = shipped.series(name, "");

  it("names its source", () => {
    expect(source.length).toBeGreaterThan(40);
    expect(source).not.toBe("no source stated");
  });

  it("stands in its file in rising diameter", () => {
    const { text } = shelf.wires.get(name) ?? { text: "" };
    const labels = text.split("\n").slice(headLines(text).length + 1, -1);
    expect(labels.map((line) => line.split(",")[0])).toEqual(wires.map(({ label }) => label));
    for (const [i, { diameter }] of wires.entries()) expect(diameter).toBeGreaterThan(wires[i - 1]?.diameter ?? 0);
  });

  it("is sold only in shipped materials, where it names any", () => {
    for (const { soldIn } of wires) expect(materials).toEqual(expect.arrayContaining([...(soldIn ?? [])]));
  });
});

describe.each(materials)("the shipped material %s", (name) => {
  const material = shipped.material(name, "");

  it("has the name of its file, and a head that says where its figures come from", () => {
    expect(material.name).toBe(name);
    expect(headLines(shelf.materials.get(name)?.text ?? "").join(" ").length).toBeGreaterThan(100);
  });

  it("is of a plausible size in every figure, so that no unit slipped", () => {
    expect(material.density).toBeGreaterThan(7500);
    expect(material.density).toBeLessThan(9000);
    for (const { youngsModulus, shearModulus } of material.moduli) {
      expect(youngsModulus / shearModulus).toBeGreaterThan(2.3);
      expect(youngsModulus / shearModulus).toBeLessThan(2.9);
      expect(shearModulus).toBeGreaterThan(38e9);
      expect(shearModulus).toBeLessThan(90e9);
    }
    expect(material.temperature.max).toBeGreaterThan(330);
    expect(material.temperature.max).toBeLessThan(600);
  });

  it("has strengths of spring wire, and power laws that fall with the diameter", () => {
    for (const { strength } of material.strength.minimum?.rows ?? []) {
      expect(strength).toBeGreaterThan(400e6);
      expect(strength).toBeLessThan(3.2e9);
    }
    for (const { exponent } of material.strength.fit ?? []) expect(exponent).toBeGreaterThanOrEqual(0);
  });
});

it("every grade that the wires are sold in is shipped, and the others that have rows", () => {
  const byStandard = {
    astm: "a227 a228 a229 a231 a231m a232 a232m a313-302 a313-631 a401 b159 b197-tf00 b197-th02 b197-th04",
    en:
      "1.4310-hs 1.4310-ns 1.4401 1.4568 1.4568-aged cusn6-3-quarter-hard cusn6-half-hard cusn6-quarter-hard " +
      "cusn8-3-quarter-hard cusn8-half-hard cusn8-hard cuzn37-half-hard cuzn37-spring-hard " +
      "dh dm fdc fdsicr sh sl sm vdsicr vdsicrv",
    gb: "fdc fdcrsi fdcrv-a fdcrv-b fdsimn",
    is: "grade-1 grade-2 grade-3 grade-4 sw vw",
    jis: "sw-a sw-b sw-c swp-a swp-b swp-v wpa wpb wpc",
  };
  const names = Object.entries(byStandard).flatMap(([body, grades]) => grades.split(" ").map((grade) => `${body}-${grade}`));
  expect([...materials].sort()).toEqual(names.sort());
});

it("the README of the materials names every one of them", () => {
  const readme = readFileSync(new URL("../../catalogs/materials/README.md", import.meta.url), "utf8");
  const [here] = readme.split("## What is left out");
  const named = [...(here ?? "").matchAll(/`([a-z]+-[\w.-]+)`/g)].map(([, name]) => name);
  expect(named.sort()).toEqual([...materials].sort());
});

it.each([
  ["astm-a232", "medium", ["memory"]],
  ["astm-a401", undefined, ["memory"]],
  ["astm-b159", undefined, ["memory", "memory", "memory"]],
  ["astm-a313-302", "high", ["high", "high", "memory"]],
  ["astm-a313-631", "memory", undefined],
  ["astm-a228", "high", ["high"]],
  ["en-sl", "memory", undefined],
  ["en-sm", "high", undefined],
  ["gb-fdcrv-b", "low", undefined],
])("%s says how far its strength may be trusted (rows %s, fit %s)", (name, rows, fit) => {
  const { strength } = shipped.material(name, "");
  expect(strength.minimum?.confidence).toBe(rows);
  expect(strength.fit?.map(({ confidence }) => confidence)).toEqual(fit);
});

it.each(materials)("%s has no row out of sequence, no hole, and a word of confidence with each strength", (name) => {
  expect(materialFaults(shipped.material(name, ""))).toEqual([]);
});

it.each(series)("the series %s has no hole in its sizes", (name) => expect(seriesFaults(shipped.series(name, ""))).toEqual([]));

describe("a fault in a shipped file stops the build:", () => {
  const changed = (name: string, from: string | RegExp, to: string) => {
    const { file, text } = shelf.materials.get(name) ?? { file: "", text: "" };
    expect(text).toMatch(from);
    return materialFaults(readMaterial({ file, text: text.replace(from, to) }));
  };

  it("a row out of sequence", () => {
    expect(changed("en-sm", "[5 mm, 1460 MPa]", "[5 mm, 1640 MPa]")).toEqual([
      "en-sm: the row of 5 mm is out of sequence: stronger than thinner wire",
    ]);
  });

  it("a hole in the rows, and in a series", () => {
    expect(changed("astm-a228", "[0.045 in, 309 ksi], [0.048 in, 306 ksi], [0.051 in, 303 ksi],", "")).toEqual([
      "astm-a228: no size between 1.067 mm and 1.397 mm",
    ]);
    const r20 = shipped.series("iso-r20", "");
    expect(seriesFaults({ ...r20, wires: r20.wires.filter(({ label }) => label !== "2 mm") })).toEqual([
      "iso-r20: no size between 1.8 mm and 2.24 mm",
    ]);
  });

  it("a strength without a word of confidence, or with one that is none of the four", () => {
    expect(changed("en-sl", /\n +confidence: memory/, "")).toEqual(["en-sl: its minimum says nothing of confidence"]);
    expect(() => changed("en-sl", "confidence: memory", "confidence: certain")).toThrow(/high \| medium \| low \| memory/);
  });

  it("a new file whose widest step nobody wrote down", () => {
    expect(seriesFaults({ ...shipped.series("swg", ""), name: "new" })).toEqual(["new: no widest step is written down for it"]);
  });
});
