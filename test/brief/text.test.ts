import { describe, expect, it } from "vitest";
import { briefText, problemsOf } from "./reading.ts";

describe("a text that is no brief", () => {
  it.each([
    ["tabs", "practice: handbook\nload:\n\tforce: 2 N\n", "yaml", 3, /indent with spaces/],
    ["an open bracket", "practice: handbook\nload: [1\nsweep: 2\n", "yaml", 3, /close quotes and brackets/],
    ["two documents", "practice: handbook\n---\nload: 1\n", "yaml", 2, /one brief/],
    ["a tag", "practice: !secret handbook\n", "yaml", 1, /write the value plainly/],
    ["deep nesting", `load: ${"[".repeat(20_000)}`, "yaml", 1, /sections and lists only/],
    ["an alias", "practice: &p handbook\ntitle: *p\n", "alias", 2, /write it out/],
    ["nothing", "", "empty", undefined, /coilsieve start/],
    ["a list", "- practice\n", "wrongKind", undefined, /practice:/],
    ["more than a quarter of a megabyte", `# ${"x".repeat(250_000)}\n`, "tooLarge", undefined, /a page of text/],
  ])("%s is one clear problem", (_title, text, code, line, fix) => {
    const problems = problemsOf(text);
    expect(problems.map((problem) => [problem.code, problem.line])).toEqual([[code, line]]);
    expect(`${problems[0]?.got}; ${problems[0]?.want}`).toMatch(fix);
  });

  it("tells each alias once, with the lines that it stands in, however often it is written", () => {
    const lines = ["a: &a [x, x]", "b: &b [*a, *a, *a]", "c: [*a, *b]", "d: *b", `e: [${Array(8).fill("*b").join(", ")}]`];
    const told = problemsOf(lines.join("\n")).map(({ line, got }) => `${line} ${got}`);
    expect(told).toEqual([
      "2 *a stands for another value, 4 times in lines 2 and 3",
      "3 *b stands for another value, 10 times in lines 3, 4 and 5",
    ]);
    const [many] = problemsOf(`a: &a x\n${Array.from({ length: 40 }, (_, i) => `k${i}: *a`).join("\n")}`);
    expect(many?.got).toBe("*a stands for another value, in lines 2, 3, 4, 5, 6, 7, 8 and 33 more");
    expect(problemsOf("a: &a x\nb: [*a, *a]").map(({ got }) => got)).toEqual(["*a stands for another value, twice in this line"]);
  });

  it("is refused in good time however many keys it has", () => {
    const text = Array.from({ length: 25_000 }, (_, i) => `k${i}: 1`).join("\n");
    expect(problemsOf(text).length).toBeGreaterThan(25_000);
  });
});

describe("all problems of a brief", () => {
  it("come together, sorted by line", () => {
    const problems = problemsOf(
      briefText({
        practice: "practise: handbook",
        load: "load: { force: 3, deflection: 2 mm }",
        envelope: "envelope: { bore: 2 }",
        limits: "limits: { wire: on }",
      }),
    );
    expect(problems.map(({ line }) => line)).toEqual([1, 1, 2, 3, 6]);
  });

  it("of a file that the brief names carry that file and its line, or the brief's where there is none", () => {
    const sweep = "sweep: { wires: [./contract/missing.csv], materials: [./contract/rate-window.yaml], ends: [plain] }";
    const problems = problemsOf(briefText({ sweep }), "test/brief/here.yaml");
    const got = "there is no file test/brief/contract/missing.csv";
    const [missing] = problems.filter(({ code }) => code === "missing");
    expect(missing).toMatchObject({ file: "test/brief/here.yaml", line: 4, key: "sweep.wires", got });
    expect(problems.filter((one) => one !== missing).every(({ file }) => file === "test/brief/contract/rate-window.yaml")).toBe(
      true,
    );
    expect(problems.length).toBeGreaterThan(2);
  });
});
