import { describe, expect, it } from "vitest";
import { readMaterial } from "../../src/catalog/materials.ts";
import { problemLine, quoted } from "../../src/problem.ts";
import { codesOf, problemsOf, shelf, sweepText } from "./answer.ts";

const text = `practice: handbook
load: { force: 30 N, deflection: 10 mm }
sweep: { wires: [iso-r20], materials: [astm-a228], ends: [squared-ground] }
`;

describe("a brief as other editors save it gives the same springs", () => {
  const { brief: _, ...plain } = sweepText(text);

  it.each([
    ["with CRLF", text.replaceAll("\n", "\r\n")],
    ["with a byte order mark", `\ufeff${text}`],
    ["without a last line break", text.trimEnd()],
    [
      "as JSON",
      '{"practice":"handbook","load":{"force":"30 N","deflection":"10 mm"},"sweep":{"wires":["iso-r20"],"materials":["astm-a228"],"ends":["squared-ground"]}}',
    ],
    ["with keys in another order", text.split("\n").reverse().join("\n")],
  ])("%s", (_title, saved) => {
    const { brief: _, ...result } = sweepText(saved);
    expect(result).toEqual(plain);
  });
});

describe("what is wrong in one place is one problem, with its line", () => {
  it.each([
    ["a decimal comma", text.replace("30 N", "30,5 N"), "comma", 2],
    ["a thousands comma", text.replace("30 N", "1,030 N"), "comma", 2],
    ["a wrong unit's name", text.replace("10 mm", "10 millimetre s"), "unknownUnit", 2],
    ["an imaginary unit", text.replace("10 mm", "10 inchs"), "unknownUnit", 2],
    ["a number of another script", text.replace("10 mm", "١٠ mm"), "notANumber", 2],
    ["a hexadecimal number", text.replace("10 mm", "0x10 mm"), "notAUnit", 2],
    ["an expression", text.replace("10 mm", "5 mm + 5 mm"), "notAUnit", 2],
    ["infinity", text.replace("10 mm", "Infinity mm"), "notANumber", 2],
    ["a size beyond doubles", text.replace("10 mm", "1e999 mm"), "outOfReach", 2],
    ["a size that vanishes in doubles", text.replace("10 mm", "1e-999 mm"), "outOfReach", 2],
    ["a negative zero", text.replace("10 mm", "-0 mm"), "range", 2],
    ["a list where a quantity is due", text.replace("10 mm", "[10 mm]"), "wrongKind", 2],
    ["a section where a word is due", text.replace("handbook", "{ name: handbook }"), "wrongKind", 1],
    ["a key twice", `${text}practice: en13906\n`, "duplicateKey", 4],
    ["__proto__", `${text}__proto__: { practice: en13906 }\n`, "unknownKey", 4],
    ["constructor", `${text}constructor: { prototype: { a: 1 } }\n`, "unknownKey", 4],
    ["a material called __proto__", text.replace("astm-a228", "__proto__"), "unknownName", 3],
    ["a series called constructor", text.replace("iso-r20", "constructor"), "unknownName", 3],
    ["a tag that would build something", text.replace("handbook", "!!js/function 'x'"), "yaml", 1],
    ["a merge key", `${text}<<: { practice: en13906 }\n`, "unknownKey", 4],
  ])("%s", (_title, changed, code, line) => {
    expect(problemsOf(() => sweepText(changed))).toMatchObject([{ code, line }]);
  });

  it("in and inch are one length", () => {
    const inches = (unit: string) => sweepText(text.replace("10 mm", `0.4 ${unit}`));
    expect(inches("inch").feasible).toBe(inches("in").feasible);
  });
});

describe("what came is quoted short, with control characters shown", () => {
  const long = "ab\u001b[31m".repeat(800);
  it.each([
    ["a word", text.replace("handbook", JSON.stringify(long))],
    ["a material", text.replace("astm-a228", JSON.stringify(long))],
    ["a list's name", text.replace("[astm-a228]", `[astm-a228, ${JSON.stringify(long)}, ${JSON.stringify(long)}]`)],
    ["a key", `${text}${JSON.stringify(long)}: 1\n`],
    ["a section", text.replace("{ force: 30 N, deflection: 10 mm }", JSON.stringify(long))],
    ["a quantity", text.replace("30 N", JSON.stringify(`30 ${long.slice(0, 70)}`))],
    ["a text that is no YAML", `${text}title: "${"x".repeat(5000)}" y`],
    [
      "the names of points",
      text.replace(
        "{ force: 30 N, deflection: 10 mm }",
        `{ points: [${["a", "b"].map((end) => `{ name: ${JSON.stringify(long + end)}, length: 30 mm, force: 30 N }`)}] }`,
      ),
    ],
  ])("%s", (_title, changed) => {
    const lines = problemsOf(() => sweepText(changed)).map(problemLine);
    expect(lines).not.toEqual([]);
    for (const line of lines) {
      expect(line.length).toBeLessThan(500);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
      expect(line).not.toMatch(/[\u0000-\u001f]/);
    }
  });

  it("its two ends stay, and the middle is left out", () => {
    expect(quoted("x".repeat(60))).toBe("x".repeat(60));
    expect(quoted(`a${"x".repeat(5000)}z`)).toBe(`a${"x".repeat(29)}…${"x".repeat(28)}z`);
    expect(quoted("a\u001bb\u202e")).toBe("a\\x1bb\\u202e");
  });

  it("a unit that nobody knows stands in quotes with the text that it came in", () => {
    const [problem] = problemsOf(() => sweepText(text.replace("30 N", "5 NaN7 mm")));
    expect(problem?.got).toBe('"NaN7 mm" in "5 NaN7 mm" is not a unit');
  });
});

it("a brief has wrong kinds everywhere: every one is told, and nothing else is thrown", () => {
  const keys = [
    "title",
    "practice",
    "load",
    "envelope",
    "sweep",
    "service",
    "limits",
    "cost",
    "rank",
    "design",
    "nested",
    "order",
  ];
  for (const value of [
    "x",
    "1",
    "[]",
    "{}",
    "[[]]",
    "[{}]",
    "{ x: {} }",
    "",
    "~",
    "off",
    "[1, [2]]",
    "{ min: 1 }",
    "{ ? [a] : b }",
  ]) {
    expect(codesOf(keys.map((key) => `${key}: ${value}`).join("\n")).length).toBeGreaterThan(3);
  }
});

describe("a material's file", () => {
  const material = shelf.materials.get("astm-a228")?.text ?? "";

  it("with a key twice says so at its line", () => {
    const lines = material.trimEnd().split("\n").length;
    const act = () => readMaterial({ file: "m.yaml", text: `${material.trimEnd()}\nname: other\n` });
    expect(problemsOf(act)).toMatchObject([{ code: "duplicateKey", line: lines + 1, key: "name" }]);
  });

  it("leaves the prototype of objects alone", () => {
    const act = () => readMaterial({ file: "m.yaml", text: `${material}\n__proto__: { polluted: 1 }\n` });
    expect(problemsOf(act)).toMatchObject([{ code: "unknownKey" }]);
    expect(Object.keys(Object.prototype)).toEqual([]);
    expect("polluted" in {}).toBe(false);
  });
});
