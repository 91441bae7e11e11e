import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { root, textOf } from "../house/tree.ts";
import { emptyFolder, runIn, runtimePackages } from "./installed.ts";

interface Metafile {
  readonly outputs: Readonly<Record<string, { readonly inputs: Readonly<Record<string, { readonly bytesInOutput: number }>> }>>;
}

/** `name version` of every package of which something is in a bundle, or in one output of it, by esbuild's account of it. */
function bundled(metafile: string, output?: string): readonly string[] {
  const { outputs } = JSON.parse(textOf(`dist/build/${metafile}`)) as Metafile;
  const folders = new Set(
    Object.entries(outputs)
      .filter(([file]) => output === undefined || file === output)
      .flatMap(([, { inputs }]) => Object.entries(inputs))
      .filter(([file, { bytesInOutput }]) => bytesInOutput > 0 && file.includes("node_modules/"))
      .map(([file]) => {
        const [before, after = ""] = [file.slice(0, file.lastIndexOf("node_modules/")), file.split("node_modules/").at(-1)];
        return `${before}node_modules/${after.split("/", after.startsWith("@") ? 2 : 1).join("/")}`;
      }),
  );
  return [...folders].map((folder) => {
    const { name, version } = JSON.parse(readFileSync(path.join(root, folder, "package.json"), "utf8"));
    return `${name} ${version}`;
  });
}

describe("the notices", () => {
  it.each([
    ["page.json", "dist/springs-page.js"],
    ["page.json", "dist/THIRD-PARTY-NOTICES.txt"],
    ["node.json", "dist/THIRD-PARTY-NOTICES.txt"],
  ])("name every package that %s says is bundled, in %s", (metafile, file) => {
    const packages = bundled(metafile);
    expect(packages.length).toBeGreaterThan(5);
    const text = textOf(file);
    expect(packages.filter((one) => !text.includes(`\n${one} (`))).toEqual([]);
  });

  const pageOf = (brief: string) => {
    const folder = emptyFolder();
    const args = [path.join(root, "dist", "cli.js"), "sweep", path.join(root, "reports", `${brief}.yaml`), "--html", "page.html"];
    expect(runIn(folder, process.execPath, args).status).toBe(0);
    return readFileSync(path.join(folder, "page.html"), "utf8");
  };

  it("stand in every page that carries the script", () => {
    const text = pageOf("vent-flap");
    for (const one of bundled("page.json")) expect(text).toContain(`\n${one} (`);
    expect(text).toContain("Redistributions in binary form must reproduce");
  });

  it("are not needed in a page of nested pairs, whose script has nothing of others in it", () => {
    expect(bundled("page.json", "dist/springs-page.js").length).toBeGreaterThan(30);
    expect(bundled("page.json", "dist/pairs-page.js")).toEqual([]);
    const text = pageOf("press-return-nested");
    expect(text).not.toContain("parts of other software");
    expect(text.length).toBeLessThan(400_000);
  });
});

describe("what is needed at run time", () => {
  const { dependencies } = JSON.parse(textOf("package.json")) as { dependencies: Record<string, string> };

  it("is stated exactly", () => {
    expect(Object.entries(dependencies).filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
  });

  it("runs nothing when it is installed", () => {
    expect(runtimePackages.length).toBeGreaterThan(50);
    expect(runtimePackages.filter(([, { hasInstallScript }]) => hasInstallScript)).toEqual([]);
  });

  it("has licences that let it be handed on", () => {
    const { stdout, stderr, status } = runIn(root, process.execPath, [licencesProgram()]);
    expect({ stderr, status }).toEqual({ stderr: "", status: 0 });
    const names = runtimePackages.map(([folder]) => folder.split("node_modules/").at(-1));
    expect(names.filter((name) => !new RegExp(`^\\S+ +${name} \\d`, "m").test(stdout))).toEqual([]);
  });

  it("is listed with its licences for whoever audits it", () => {
    const { stdout, status } = runIn(root, "npm", ["run", "--silent", "sbom", "--", "--offline"]);
    expect(status).toBe(0);
    const { bomFormat, components } = JSON.parse(stdout) as {
      readonly bomFormat: string;
      readonly components: readonly { readonly "bom-ref": string; readonly properties: readonly { readonly name: string }[] }[];
    };
    expect(bomFormat).toBe("CycloneDX");
    // npm's own mark of what only development needs; to omit those would also omit what both need.
    const shipped = components.filter(({ properties }) => !properties.some(({ name }) => name.endsWith(":development")));
    const { packages } = JSON.parse(textOf("package-lock.json")) as { packages: Record<string, { version: string }> };
    const wanted = runtimePackages.map(([folder]) => `${folder.split("node_modules/").at(-1)}@${packages[folder]?.version}`);
    expect(shipped.map((one) => one["bom-ref"]).sort()).toEqual([...new Set(wanted)].sort());
  });
});

/** The built list of licences, made by its npm script where it is not there yet. */
function licencesProgram(): string {
  const program = path.join(root, "dist", "build", "licences.js");
  if (!existsSync(program)) runIn(root, "npm", ["run", "--silent", "licences"]);
  return program;
}
