import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { briefKeys } from "../../../src/brief/keys.ts";
import { keyWords, takenWords } from "../../../src/report/text/key-labels.ts";
import { read } from "../../brief/reading.ts";
import { brief } from "../fixture.ts";

const demos = readdirSync("reports")
  .filter((name) => name.endsWith(".yaml") && !/wire|check/.test(name))
  .map((name) => read(readFileSync(`reports/${name}`, "utf8"), `reports/${name}`));

describe("keys of a brief in a reader's words", () => {
  it.each([
    ["load.points[2].force.min", "force at open, least"],
    ["load.points[1].length", "length at closed"],
    ["envelope.freeLength.max", "free length, largest"],
    ["limits.index", "index"],
    ["limits.fatigue.safety", "fatigue, safety"],
    ["limits.clash.length", "clash allowance, as a length"],
    ["service.temperature", "service temperature"],
  ])("%s is %s", (key, words) => {
    expect(keyWords(key, brief)).toBe(words);
  });

  it("every quantity that a brief of springs can ask has words", () => {
    const asked = briefKeys.filter(
      ({ kind, path }) => /^(quantity|requirement|window)$/.test(kind) && !path.startsWith("design"),
    );
    expect(asked.length).toBeGreaterThan(25);
    const unsaid = asked.map(({ path }) => path.replace("[]", "[1]")).filter((key) => /[.[\]]/.test(keyWords(key, brief)));
    expect(unsaid).toEqual([]);
  });

  it("every quantity and default of the demo briefs has words", () => {
    expect(demos.length).toBeGreaterThan(3);
    for (const demo of demos) {
      const keys = [...demo.asked, ...demo.defaults].map(({ key }) => key);
      expect(keys.filter((key) => /[.[\]]/.test(keyWords(key, demo)))).toEqual([]);
    }
  });

  it("a key that nobody knows stands as it is", () => {
    expect(keyWords("load.points[9].force", brief)).toBe("load.points[9].force");
    expect(keyWords("some.other.max", brief)).toBe("some.other.max");
  });
});

describe("defaults in a reader's words", () => {
  it.each([
    ["{ min: 4, max: 12 }", "4 to 12"],
    ["{ safety: 1.2 }", "safety 1.2"],
    ["{ multiple: 15 }", "15 times the frequency of work"],
    ["{ ofDeflection: 0.15 }", "15 % of the largest working deflection"],
    ["{ step: 0.1 mm }", "steps of 0.1 mm"],
    ["as wound", "as wound"],
  ])("%s is %s", (text, words) => {
    expect(takenWords(text)).toBe(words);
  });

  it("none of the demo briefs' defaults keeps its braces", () => {
    const texts = demos.flatMap(({ defaults }) => defaults.map(({ text }) => takenWords(text)));
    expect(texts.filter((text) => /[{}]/.test(text))).toEqual([]);
  });
});
