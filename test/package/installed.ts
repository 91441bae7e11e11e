import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { root, textOf } from "../house/tree.ts";

/** What a run leaves to see. */
export interface Ran {
  readonly stdout: string;
  readonly stderr: string;
  readonly status: number | null;
}

/** What npm tells what it runs is not for an npm that these tests run. */
const env = Object.fromEntries(Object.entries(process.env).filter(([name]) => !name.startsWith("npm_")));

/** Runs a program in a folder and waits for its end. */
export function runIn(folder: string, command: string, args: readonly string[]): Ran {
  const { stdout, stderr, status } = spawnSync(command, args, { cwd: folder, encoding: "utf8", env });
  return { stdout, stderr, status };
}

/** A new empty folder. */
export function emptyFolder(): string {
  return mkdtempSync(path.join(tmpdir(), "coilsieve-package-"));
}

/** The tarball of what is built, as it would be published, and the files in it. */
export function packed(): { readonly tarball: string; readonly files: readonly string[] } {
  const folder = emptyFolder();
  // What is built already: to build anew would take it away from tests that run beside these.
  const { stdout, stderr, status } = runIn(root, "npm", ["pack", "--ignore-scripts", "--json", "--pack-destination", folder]);
  if (status !== 0) throw new Error(stderr);
  const [{ filename, files }] = JSON.parse(stdout) as [{ filename: string; files: { path: string }[] }];
  return { tarball: path.join(folder, filename), files: files.map((file) => file.path) };
}

/** A package of the lock file. */
export interface Locked {
  readonly dev?: true;
  readonly optional?: true;
  readonly hasInstallScript?: true;
}

/** The packages that are needed at run time, by their folder; of those for some machines only, the ones for this machine. */
export const runtimePackages: readonly (readonly [string, Locked])[] = Object.entries(
  (JSON.parse(textOf("package-lock.json")) as { packages: Readonly<Record<string, Locked>> }).packages,
).filter(([folder, { dev, optional }]) => folder !== "" && dev !== true && (!optional || existsSync(path.join(root, folder))));

/**
 * A new project with the tarball installed by npm, without a network: the packages it depends on lie there already, as the lock
 * file has them, and npm's cache is empty.
 */
export function installed(tarball: string): string {
  const folder = emptyFolder();
  writeFileSync(path.join(folder, "package.json"), '{ "private": true, "type": "module" }\n');
  mkdirSync(path.join(folder, "node_modules"));
  for (const [dependency] of runtimePackages) {
    if (/node_modules\/.*node_modules\//.test(dependency)) continue;
    cpSync(path.join(root, dependency), path.join(folder, dependency), { recursive: true });
  }
  // npm fetches anew what has lost the links to its programs.
  const links = path.join("node_modules", ".bin");
  cpSync(path.join(root, links), path.join(folder, links), { recursive: true, verbatimSymlinks: true });
  const install = ["install", "--offline", "--cache", emptyFolder(), "--no-audit", "--no-fund", tarball];
  const { stderr, status } = runIn(folder, "npm", install);
  if (status !== 0) throw new Error(stderr);
  return folder;
}
