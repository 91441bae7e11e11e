import { describe, expect, it } from "vitest";
import { readBrief } from "../../src/brief/read.ts";
import { readMaterial } from "../../src/catalog/materials.ts";
import { readWireSeries } from "../../src/catalog/wires.ts";
import { LIMIT_ORDER } from "../../src/constrain/limits/limits.ts";
import { REJECTION_ORDER } from "../../src/constrain/rejection-counts.ts";
import type { Brief, LimitName } from "../../src/model.ts";
import { limitWords } from "../../src/report/text/labels.ts";
import { shipped } from "../catalog/shipped.ts";
import { quoted, tableOf, textOf, underHeading } from "./tree.ts";
import { blocksOf, holdsWhatIsTyped } from "./typed.ts";

const GUIDE = "reports/guide.md";
const blocks = (language: string) => ["README.md", GUIDE].flatMap((paper) => blocksOf(paper, language));

describe("what the README types", () => {
  holdsWhatIsTyped("README.md", 1);
});

describe("what the guide types", () => {
  holdsWhatIsTyped(GUIDE, 12);
});

describe("what README and guide write in files", () => {
  const walked = "practice: handbook\nsweep: { wires: [iso-r20], materials: [astm-a228], ends: [squared-ground] }\n";
  const yaml = blocks("yaml");
  /** Each text with its first lines, to be called by. */
  const called = (texts: readonly string[]) => texts.map((text) => [text.split("\n").slice(0, 2).join(" "), text] as const);

  it.each(called(yaml.filter((text) => /^load:/.test(text))))("a kind of load reads as it stands: %s", (_, text) => {
    expect(readBrief(`${walked}${text}`, "load.yaml", shipped).load.kind).toBeTypeOf("string");
  });

  it.each(called(yaml.filter((text) => /^practice:/m.test(text))))("a brief reads as it stands: %s", (_, text) => {
    expect(readBrief(text, "brief.yaml", shipped).load.kind).toBeTypeOf("string");
  });

  it.each(called(yaml.filter((text) => /^density:/m.test(text))))("a material reads as it stands: %s", (_, text) => {
    expect(readMaterial({ file: "material.yaml", text }).strength).toBeDefined();
  });

  it.each(called(blocks("csv")))("a wire series reads as it stands: %s", (_, text) => {
    expect(readWireSeries({ file: "stock.csv", text }, "stock").wires.length).toBeGreaterThan(0);
  });

  it("shows every kind of load", () => {
    const loads = yaml
      .filter((text) => /^load:/.test(text))
      .map((text) => readBrief(`${walked}${text}`, "load.yaml", shipped).load);
    const kinds: readonly Brief["load"]["kind"][] = ["forceAtDeflection", "points", "rateAndLargestForce", "rateAndPoint"];
    expect([...new Set(loads.map(({ kind }) => kind))].sort()).toEqual([...kinds]);
  });

  it("shows what a wrong brief is told, word for word", () => {
    const wrong = walked.replace("sweep", "load: { force: 20 lb, deflection: 10 }\nsweep");
    const told = () => readBrief(`${wrong}limts: {}\n`, "bad.yaml", shipped);
    const [shown] = blocks("").filter((text) => text.startsWith("bad.yaml"));
    expect(shown).toBeDefined();
    expect(told).toThrow(shown?.trimEnd());
  });

  it("shows what a wrong stock is told, word for word", () => {
    const rows = ["A,0.7 mm,four", "B,0,9 mm,4 / kg", "C,1.2 mm,-4 / kg", "D,1.2 mm,4 / kg", "E,2 mm,"];
    const told = () => readWireSeries({ file: "stock.csv", text: `label,diameter,price\n${rows.join("\n")}\n` }, "stock");
    const [shown] = blocks("").filter((text) => text.startsWith("stock.csv"));
    expect(shown).toBeDefined();
    expect(told).toThrow(shown?.trimEnd());
  });

  it("explains the demo brief as it stands", () => {
    expect(yaml).toContain(textOf("reports/latch-plunger.yaml"));
  });
});

describe("the table of limits in the guide", () => {
  const [, ...rows] = tableOf(underHeading(textOf(GUIDE), "## Limits"));
  const nameOf = (row: readonly string[]) => quoted(row[0] ?? "")[0] as LimitName;

  it("has a row for every limit, in the order in which a candidate falls, and every limit has its words", () => {
    expect(REJECTION_ORDER).toEqual(expect.arrayContaining([...LIMIT_ORDER]));
    expect(rows.map(nameOf)).toEqual([...REJECTION_ORDER]);
    expect(Object.keys(limitWords).sort()).toEqual([...REJECTION_ORDER].sort());
  });
});
