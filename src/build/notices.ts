import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";

/**
 * Run by the build, from the root of the checkout: says which packages are inside the bundles, from esbuild's own account of
 * them, with the licence of each as its package has it. One text stands beside the program; what is inside the script of a page
 * heads that script, so that every page that carries it carries the notices.
 */

/** What of esbuild's account of a bundle is read here. */
interface Metafile {
  readonly outputs: Readonly<Record<string, { readonly inputs: Readonly<Record<string, { readonly bytesInOutput: number }>> }>>;
}

/** Packages that share one text of licence and notice, each as `name version (licence)`. */
interface Notice {
  readonly packages: readonly string[];
  readonly text: string;
}

const pageScripts = ["dist/springs-page.js", "dist/pairs-page.js"];
const inPages = packageFolders("dist/build/page.json");
const inNode = packageFolders("dist/build/node.json");

writeFileSync(
  "dist/THIRD-PARTY-NOTICES.txt",
  `coilsieve contains parts of other software, in its program and library and in the scripts of its pages.\n${noticesOf([...inPages, ...inNode])}`,
);
for (const script of pageScripts) {
  const inScript = [...packageFolders("dist/build/page.json", script)];
  if (inScript.length === 0) continue;
  const head = `This script contains parts of other software.\n${noticesOf(inScript)}`;
  if (/\*\/|<\/script|<!--/i.test(head)) throw new Error("a licence would end the comment that it stands in");
  writeFileSync(script, `/*!\n${head}*/\n${readFileSync(script, "utf8")}`);
}

/** Folders of the packages of which something is in a bundle, or in one output of it. */
function packageFolders(metafile: string, output?: string): ReadonlySet<string> {
  const { outputs } = JSON.parse(readFileSync(metafile, "utf8")) as Metafile;
  const told = Object.entries(outputs).filter(([file]) => output === undefined || file === output);
  const inputs = told.flatMap(([, { inputs }]) => Object.entries(inputs));
  const folders = inputs
    .filter(([, { bytesInOutput }]) => bytesInOutput > 0)
    .map(([file]) => /^.*node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(file)?.[0]);
  return new Set(folders.filter((folder) => folder !== undefined));
}

function noticesOf(folders: readonly string[]): string {
  const byText = new Map<string, string[]>();
  for (const folder of [...new Set(folders)].sort()) {
    const { name, version, license } = JSON.parse(readFileSync(path.join(folder, "package.json"), "utf8"));
    const text = licenceOf(folder);
    byText.set(text, [...(byText.get(text) ?? []), `${name} ${version} (${license})`]);
  }
  const notices: readonly Notice[] = [...byText].map(([text, packages]) => ({ packages, text }));
  return notices.map(({ packages, text }) => `\n${"-".repeat(80)}\n${packages.join("\n")}\n\n${text}\n`).join("");
}

/** The licence of a package and what else it asks to be handed on, as its files have them. */
function licenceOf(folder: string): string {
  const files = readdirSync(folder).filter((file) => /^(licen[cs]e|copying|notice)/i.test(file));
  if (files.length === 0) throw new Error(`${folder} has no text of its licence`);
  const texts = files.sort().map((file) => readFileSync(path.join(folder, file), "utf8"));
  return texts.map((text) => text.replaceAll("\r\n", "\n").trim()).join("\n\n");
}
