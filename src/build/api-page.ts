import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";

/**
 * `npm run docs`, also a part of the build: the library's functions and types on one page, from the declarations that the
 * compiler makes of `index.ts` and what it re-exports. An export without a docstring is an error.
 */

/** An export with its docstring, without marks, and its declaration. */
interface Documented {
  readonly name: string;
  readonly kind: string;
  readonly docstring: string;
  readonly declaration: string;
}

const { version } = JSON.parse(readFileSync("package.json", "utf8")) as { version: string };
const items = exportsOf(readFileSync("dist/index.d.ts", "utf8"));
const undocumented = items.filter(({ docstring }) => docstring === "").map(({ name }) => name);
if (undocumented.length > 0) throw new Error(`exports without a docstring: ${undocumented.join(", ")}`);

mkdirSync("dist/docs", { recursive: true });
writeFileSync(
  "dist/docs/api.md",
  [
    `# The library of coilsieve ${version}`,
    `Made from the docstrings. Numbers are SI: m, N, Pa, kg, Hz, K, rad. Begin with ${["loadBrief", "sweep", "SweepResult"].map(link).join(", ")}.`,
    ...section("Functions", ["function", "class"]),
    ...section("Types", ["interface", "type"]),
  ].join("\n\n"),
);

function section(title: string, kinds: readonly string[]): readonly string[] {
  const shown = items.filter(({ kind }) => kinds.includes(kind));
  const list = shown.map(({ name }) => link(name)).join(", ");
  return [`## ${title}`, list, ...shown.map(partOf)];
}

function link(name: string): string {
  return `[${name}](#${name.toLowerCase()})`;
}

function partOf({ name, docstring, declaration }: Documented): string {
  return `### ${name}\n\n${proseOf(docstring)}\n\n\`\`\`ts\n${declaration}\n\`\`\`\n`;
}

/** A docstring as Markdown: its tags as a list, one item each. */
function proseOf(docstring: string): string {
  const [before = "", ...tags] = docstring.split(/^@/m);
  const titles: Readonly<Record<string, string>> = { returns: "Returns", throws: "Throws", range: "Range", source: "Source" };
  const listed = tags.map((tag) => {
    const [, word = "", rest = ""] = /^(\w+)\s*([\s\S]*)$/.exec(tag.replaceAll(/\s+/g, " ").trim()) ?? [];
    const [, name = "", text = ""] = /^(\S+) ?(.*)$/.exec(rest) ?? [];
    return word === "param" ? `- \`${name}\`: ${text}` : `- ${titles[word] ?? word}: ${rest}`;
  });
  // What a docstring sets in, formulas and diagrams, stays as it is set.
  const prose = before.trim().replace(/^ {2,}/gm, (indent) => `  ${indent}`);
  return [prose, listed.join("\n")].filter((part) => part !== "").join("\n\n");
}

/** What the index hands out, in its order. */
function exportsOf(index: string): readonly Documented[] {
  return [...index.matchAll(/^export (?:type )?(\*|\{[^}]*\}) from "(.*)\.ts";$/gm)].flatMap(([, names = "", module = ""]) => {
    const declared = declarationsOf(readFileSync(path.join("dist", `${module}.d.ts`), "utf8"));
    if (names === "*") return declared;
    return [...names.matchAll(/(?:type )?(\w+)/g)].map(([, name]) => {
      const found = declared.find((one) => one.name === name);
      if (found === undefined) throw new Error(`${module} declares no ${name}`);
      return found;
    });
  });
}

/** The exported declarations of a module as the compiler prints them: each begins at the edge, its docstring above it. */
function declarationsOf(text: string): readonly Documented[] {
  const statements = text.matchAll(
    /^(?:\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\n)?(export (?:declare )?(function|class|interface|type) (\w+)[\s\S]*?)(?=\n(?:\/\*\*|export |import |declare )|\n*$(?![\s\S]))/gm,
  );
  return [...statements].map(([, docstring = "", declaration = "", kind = "", name = ""]) => ({
    name,
    kind,
    docstring: docstring.replace(/^[ \t]*\* ?/gm, "").trim(),
    declaration: declaration.replace("export declare ", "").replace("export ", ""),
  }));
}
