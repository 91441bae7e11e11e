import { sources, textOf } from "./tree.ts";

/** One parameter of a formula as its docstring describes it. */
export interface DocumentedParameter {
  readonly name: string;
  /** With its symbol and unit. */
  readonly text: string;
}

/** An exported formula of `mechanics`, as its docstring has it. */
export interface Formula {
  readonly name: string;
  /** What it gives, in one sentence or more. */
  readonly sentences: string;
  /** Equations, a line each. */
  readonly equations: readonly string[];
  /** What is said below the equations. */
  readonly remarks: string;
  readonly parameters: readonly DocumentedParameter[];
  readonly returns: string;
  readonly range: string;
  readonly source: string;
}

/** Every formula of `mechanics` by its name. */
export const formulas: ReadonlyMap<string, Formula> = new Map(
  sources
    .filter((file) => file.startsWith("mechanics/"))
    .flatMap((file) => [...textOf(`src/${file}`).matchAll(/\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\nexport function (\w+)\(/g)])
    .map(([, docstring = "", name = ""]) => [name, formulaOf(name, docstring)]),
);

function formulaOf(name: string, docstring: string): Formula {
  const lines = docstring.split("\n").map((line) => line.replace(/^ \* ?/, ""));
  const [head = "", ...tags] = lines.join("\n").split(/\n@(?=[a-z])/);
  const paragraphs = head.trim().split(/\n\s*\n/);
  // A paragraph set in by two spaces or more is an equation.
  const isEquation = (paragraph: string) => /^ {2}/.test(paragraph);
  const at = paragraphs.findIndex(isEquation);
  const plain = (paragraph: string) => paragraph.replaceAll(/\s*\n\s*/g, " ").trim();
  const tagged = (tag: string) =>
    tags.filter((text) => text.startsWith(`${tag} `)).map((text) => plain(text.slice(tag.length + 1)));
  return {
    name,
    sentences: plain(paragraphs[0] ?? ""),
    equations: paragraphs.filter(isEquation).flatMap((paragraph) => paragraph.split("\n").map((line) => line.trim())),
    remarks:
      at < 0
        ? ""
        : paragraphs
            .slice(at + 1)
            .filter((paragraph) => !isEquation(paragraph))
            .map(plain)
            .join(" "),
    parameters: tagged("param").map((text) => {
      const [, parameter = "", description = ""] = /^(\w+)\s+(.*)$/.exec(text) ?? [];
      return { name: parameter, text: description };
    }),
    returns: tagged("returns")[0] ?? "",
    range: tagged("range")[0] ?? "",
    source: tagged("source")[0] ?? "",
  };
}
