import { cpSync, existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { root, textOf } from "../house/tree.ts";
import { emptyFolder, installed, packed, runIn } from "./installed.ts";

let tarball = "";
let files: readonly string[] = [];
let project = "";

beforeAll(() => {
  ({ tarball, files } = packed());
  project = installed(tarball);
  cpSync(path.join(root, "reports", "latch-plunger.yaml"), path.join(project, "latch.yaml"));
});

const packageJson = JSON.parse(textOf("package.json")) as { version: string; engines: { node: string } };

describe("the tarball", () => {
  it("holds program, library, types, catalogs, schemas, notices and papers, and nothing else", () => {
    const kinds: Readonly<Record<string, RegExp>> = {
      program: /^dist\/(cli|cli\/threads\/worker|part-\w+)\.js$/,
      scripts: /^dist\/(springs|pairs)-page\.js$/,
      library: /^dist\/index\.js$/,
      types: /^dist\/[\w/-]+\.d\.ts$/,
      docs: /^dist\/docs\/api\.md$/,
      catalogs: /^catalogs\/.*\.(csv|yaml|md)$/,
      schemas: /^dist\/schema\/(brief|material|wires|ends)\.json$/,
      notices: /^dist\/THIRD-PARTY-NOTICES\.txt$/,
      papers: /^(README\.md|CHANGELOG\.md|LICENSE|package\.json)$/,
    };
    const patterns = Object.values(kinds);
    expect(files.filter((file) => !patterns.some((pattern) => pattern.test(file)))).toEqual([]);
    expect(patterns.filter((pattern) => !files.some((file) => pattern.test(file)))).toEqual([]);
  });

  it("holds every type that the library's types name, and they name no other package", () => {
    const reached = new Set(["dist/index.d.ts"]);
    for (const file of reached) {
      for (const [, name = ""] of textOf(file).matchAll(/(?:from |import\()"([^"]+)"/g)) {
        expect(name, `named in ${file}`).toMatch(/^\..*\.ts$/);
        reached.add(path.posix.join(path.posix.dirname(file), name.replace(/\.ts$/, ".d.ts")));
      }
    }
    expect(reached.size).toBeGreaterThan(10);
    expect([...reached].filter((file) => !files.includes(file))).toEqual([]);
  });

  it("holds every catalog of the tree", () => {
    const kept = ["wires", "materials"].flatMap((kind) =>
      readdirSync(path.join(root, "catalogs", kind)).map((file) => `catalogs/${kind}/${file}`),
    );
    expect(kept.filter((file) => !files.includes(file))).toEqual([]);
  });
});

describe("the program of an installed package", () => {
  const npx = (args: readonly string[]) => runIn(project, "npx", ["--offline", "--no", "--", "coilsieve", ...args]);

  it("runs by its name", () => {
    expect(npx(["--version"])).toEqual({ stdout: `${packageJson.version}\n`, stderr: "", status: 0 });
  });

  it("sweeps a brief and writes the page, the sheet and the workbook", () => {
    const outputs = ["--html", "latch.html", "--sheet", "sheet.html", "--worked", "latch.xlsx"];
    const { stdout, status } = npx(["sweep", "latch.yaml", ...outputs]);
    expect(stdout).toContain("candidates walked");
    expect(status).toBe(0);
    for (const file of ["latch.html", "sheet.html", "latch.xlsx"]) expect(existsSync(path.join(project, file)), file).toBe(true);
  });

  it("runs with no other package at hand", () => {
    const folder = emptyFolder();
    expect(runIn(folder, "tar", ["xzf", tarball]).status).toBe(0);
    writeFileSync(path.join(folder, "latch.yaml"), readFileSync(path.join(project, "latch.yaml")));
    const args = [
      path.join("package", "dist", "cli.js"),
      "sweep",
      "latch.yaml",
      "--html",
      "latch.html",
      "--worked",
      "latch.xlsx",
    ];
    expect(runIn(folder, process.execPath, args)).toMatchObject({ stderr: "", status: 0 });
    expect(existsSync(path.join(folder, "latch.html"))).toBe(true);
  });
});

describe("the library of an installed package", () => {
  const [, example = ""] = /^```ts\n([\s\S]*?)^```/m.exec(textOf("reports/guide.md")) ?? [];

  it("runs the guide's example as it stands there", () => {
    expect(example).toContain('from "coilsieve"');
    // Node 20 runs no types; the example has none that would have to be taken out.
    writeFileSync(path.join(project, "example.mjs"), example);
    const { stdout, stderr, status } = runIn(project, process.execPath, ["example.mjs"]);
    expect({ stderr, status }).toEqual({ stderr: "", status: 0 });
    expect(stdout).toContain("en-sh");
  });

  it("has a page on which every function and type that it hands out is described", async () => {
    const script = 'console.log(Object.keys(await import("coilsieve")).join(" "))';
    const names = runIn(project, process.execPath, ["--input-type=module", "--eval", script]).stdout.trim().split(" ");
    expect(names).toEqual(expect.arrayContaining(["check", "loadBrief", "nestedSweep", "relax", "sweep", "writeBrief"]));
    const page = readFileSync(path.join(project, "node_modules", "coilsieve", "dist", "docs", "api.md"), "utf8");
    for (const name of [...names, "Brief", "Design", "SweepResult"]) {
      const [, described = ""] = page.split(`\n### ${name}\n\n`);
      expect(described, name).toMatch(/^[A-Z`].{20,}/);
    }
  });

  it("hands out the JSON Schemas that the program prints", () => {
    for (const kind of ["brief", "material", "wires", "ends"]) {
      const script = `process.stdout.write((await import("node:fs")).readFileSync(new URL(import.meta.resolve("coilsieve/schema/${kind}.json"))))`;
      const { stdout } = runIn(project, process.execPath, ["--input-type=module", "--eval", script]);
      expect(JSON.parse(stdout).$schema).toBe("http://json-schema.org/draft-07/schema#");
      expect(runIn(project, "npx", ["--offline", "--no", "--", "coilsieve", "schema", kind]).stdout).toBe(stdout);
    }
  });

  it("runs with no other package at hand", () => {
    const folder = emptyFolder();
    expect(runIn(folder, "tar", ["xzf", tarball]).status).toBe(0);
    const script =
      'const { loadBrief, sweep } = await import("./package/dist/index.js"); console.log(sweep(loadBrief("latch.yaml")).feasible)';
    writeFileSync(path.join(folder, "latch.yaml"), readFileSync(path.join(project, "latch.yaml")));
    const { stdout, stderr } = runIn(folder, process.execPath, ["--input-type=module", "--eval", script]);
    expect({ fits: Number(stdout) > 0, stderr }).toEqual({ fits: true, stderr: "" });
  });

  it("type-checks the guide's example and its own types strictly, with no other types at hand", () => {
    writeFileSync(path.join(project, "example.ts"), example);
    const strict = { strict: true, exactOptionalPropertyTypes: true, noUncheckedIndexedAccess: true, skipLibCheck: false };
    const how = { target: "es2023", lib: ["es2023", "dom"], module: "nodenext", types: [], noEmit: true };
    writeFileSync(
      path.join(project, "tsconfig.json"),
      JSON.stringify({ compilerOptions: { ...strict, ...how }, files: ["example.ts"] }),
    );
    const tsc = path.join(root, "node_modules", "typescript", "bin", "tsc");
    expect(runIn(project, process.execPath, [tsc, "-p", "."])).toEqual({ stdout: "", stderr: "", status: 0 });
  });

  it("does not type-check where it is used wrongly", () => {
    writeFileSync(path.join(project, "example.ts"), 'import { sweep } from "coilsieve";\nsweep({ practice: "handbook" });\n');
    const tsc = path.join(root, "node_modules", "typescript", "bin", "tsc");
    const { stdout, status } = runIn(project, process.execPath, [tsc, "-p", "."]);
    expect(stdout).toContain("example.ts(2,7): error TS");
    expect(status).not.toBe(0);
  });
});
