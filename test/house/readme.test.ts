import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { readBrief } from "../../src/brief/read.ts";
import { readMaterial } from "../../src/catalog/materials.ts";
import { readWireSeries } from "../../src/catalog/wires.ts";
import { LIMIT_ORDER } from "../../src/constrain/limits.ts";
import { TALLY_ORDER } from "../../src/constrain/tally.ts";
import type { Brief, LimitName } from "../../src/model.ts";
import { type Practice, practices } from "../../src/practice/practice.ts";
import { limitWords } from "../../src/report/words.ts";
import { shipped } from "../catalog/shipped.ts";
import { filesBelow, quoted, root, tableOf, textOf, underHeading } from "./tree.ts";

const readme = textOf("README.md");

/** Fenced blocks of one language, in order. */
function blocks(language: string): readonly string[] {
  return [...readme.matchAll(/^```(\w*)\n([\s\S]*?)^```/gm)]
    .filter(([, name]) => name === language)
    .map(([, , text]) => text as string);
}

/** What is typed in a block of terminal, each with what is shown below it. */
interface Typed {
  readonly command: string;
  readonly shown: readonly string[];
}

const typed: readonly Typed[] = blocks("console").flatMap((block) =>
  block
    .split(/^\$ /m)
    .slice(1)
    .map((part) => {
      const [command = "", ...shown] = part.trimEnd().split("\n");
      return { command, shown };
    }),
);

/** An empty folder with the demo briefs, in which everything that the README types is run in turn. */
const folder = mkdtempSync(path.join(tmpdir(), "coilsieve-readme-"));
mkdirSync(path.join(folder, "reports"));
for (const file of filesBelow("reports").filter((name) => name.endsWith(".yaml")))
  cpSync(path.join(root, file), path.join(folder, file));

/** What is asked for after a command, to show its exit status. */
const ASKED = "; echo $?";

/** Runs what is typed; its lines, the exit status last where that is asked for. */
function run(command: string): { readonly lines: readonly string[]; readonly status: number | null } {
  const [, ...words] = command.replace(ASKED, "").split(" ");
  const { stdout, stderr, status } = spawnSync(process.execPath, [path.join(root, "dist", "cli.js"), ...words], {
    cwd: folder,
    encoding: "utf8",
  });
  const lines = `${stdout}${stderr}`.trimEnd().split("\n");
  return { lines: command.endsWith(ASKED) ? [...lines, `${status}`] : lines, status };
}

describe("what the README types", () => {
  it("is there", () => {
    expect(typed.length).toBeGreaterThan(5);
    for (const { command } of typed) expect(command).toMatch(/^coilsieve \w/);
  });

  it.each(typed)("$command shows what stands below it", { timeout: 60_000 }, ({ command, shown }) => {
    const { lines, status } = run(command);
    if (!command.endsWith(ASKED)) expect(status, lines.join("\n")).toBe(0);
    expect(shown.filter((line) => [...line].length > 80)).toEqual([]);
    // A line of three dots stands for lines that are left out.
    let from = 0;
    for (const stretch of shown.join("\n").split(/^\.\.\.$\n?/m)) {
      const wanted = stretch.replace(/\n$/, "").split("\n");
      if (wanted.join("") === "") continue;
      const at = lines.findIndex((_, i) => i >= from && wanted.every((line, j) => lines[i + j] === line));
      expect(at, `${wanted.join("\n")}\nis not in\n${lines.slice(from).join("\n")}`).toBeGreaterThanOrEqual(0);
      from = at + wanted.length;
    }
  });

  it("names npm scripts that are there", () => {
    const { scripts } = JSON.parse(textOf("package.json")) as { scripts: Record<string, string> };
    const named = [...readme.matchAll(/npm run ([\w:]+)/g)].map(([, name]) => name as string);
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
  });

  it("shows pictures that are there", () => {
    const pictures = [...readme.matchAll(/!\[[^\]]+\]\(([^)]+)\)/g)].map(([, file]) => file as string);
    expect(pictures.length).toBeGreaterThan(0);
    expect(pictures.filter((file) => !existsSync(path.join(root, file)))).toEqual([]);
  });
});

describe("what the README writes in files", () => {
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

  it("explains the demo brief as it stands", () => {
    expect(yaml).toContain(textOf("reports/latch-plunger.yaml"));
  });
});

describe("the table of limits in the README", () => {
  const [, ...rows] = tableOf(underHeading(readme, "## Limits"));
  const nameOf = (row: readonly string[]) => quoted(row[0] ?? "")[0] as LimitName;

  it("has a row for every limit, in the order in which a candidate falls, and every limit has its words", () => {
    expect(TALLY_ORDER).toEqual(expect.arrayContaining([...LIMIT_ORDER]));
    expect(rows.map(nameOf)).toEqual([...TALLY_ORDER]);
    expect(Object.keys(limitWords).sort()).toEqual([...TALLY_ORDER].sort());
  });

  /** A practice's default as the table prints it; limits without one are not asked of the practice. */
  function defaultsOf({ index, turns, clash, solidSafety, bucklingSafety, surgeMultiple, fatigue }: Practice) {
    const window = ({ value, source }: Practice["index"]) => [`${value.min} to ${value.max}`, source];
    const share = "ofDeflection" in clash.value ? `${100 * clash.value.ofDeflection} %` : "n (0.0015 D²/d + 0.1 d)";
    return {
      index: window(index),
      turns: window(turns),
      clash: [share, clash.source],
      solidStress: [`${solidSafety.value}`, solidSafety.source],
      buckling: [`${bucklingSafety.value}`, bucklingSafety.source],
      surge: [`${surgeMultiple.value}`, surgeMultiple.source],
      fatigue: [`${fatigue.safety.value}`, fatigue.safety.source],
    };
  }

  it.each([
    [2, practices.handbook],
    [3, practices.en13906],
  ])("gives in column %i the defaults of the practice with their sources", (column, practice) => {
    for (const [limit, [value = "", source = ""]] of Object.entries(defaultsOf(practice))) {
      const cell = rows.find((row) => nameOf(row) === limit)?.[column] ?? "";
      const [before = "", ...after] = cell.split(`(${source})`);
      expect(after, `${limit}: ${cell}`).toHaveLength(1);
      // Whole, so that 1 is not found in 1.2 or 15.
      expect(` ${before.replaceAll(",", " ")}`, limit).toContain(` ${value} `);
    }
  });
});
