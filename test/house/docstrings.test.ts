import { describe, expect, it } from "vitest";
import { sources, textOf } from "./tree.ts";

/** An exported function of `mechanics` with the text above it. */
interface Formula {
  readonly name: string;
  readonly parameters: readonly string[];
  readonly docstring: string;
}

const formulas: readonly Formula[] = sources
  .filter((file) => file.startsWith("mechanics/"))
  .flatMap((file) =>
    [...textOf(`src/${file}`).matchAll(/(?:\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\n)?export function (\w+)\(([\s\S]*?)\n?\): /g)].map(
      ([, docstring = "", name = "", parameters = ""]) => ({
        name,
        // What stands in braces is the monotonicity of one parameter.
        parameters: [...parameters.replace(/\{[^}]*\}/g, "").matchAll(/(\w+): /g)].map(([, parameter]) => parameter as string),
        docstring,
      }),
    ),
  );

/** A unit of SI as docstrings write it, or the words that stand for none. */
const UNIT = /\b(?:m|N|Pa|kg|Hz|K|s|rad|N\/m|kg\/m³|1\/K)\b|pure number|in the unit of the (?:heads|table)/;

describe.each(formulas)("the docstring of $name", ({ parameters, docstring }) => {
  /** What follows a tag, up to the next. */
  const tagged = (tag: string) => (docstring.split(`@${tag} `)[1] ?? "").split("@")[0] as string;

  it("names every parameter with its unit", () => {
    const described = new Map([...docstring.matchAll(/@param (\w+)\s+([^@]*)/g)].map(([, name, text]) => [name, text as string]));
    expect([...described.keys()]).toEqual(parameters);
    expect([...described].filter(([, text]) => !UNIT.test(text))).toEqual([]);
  });

  it("says what it returns and in what unit, over what range it holds, and who says so", () => {
    expect(tagged("returns")).toMatch(UNIT);
    expect(tagged("range").trim()).not.toBe("");
    expect(tagged("source").trim()).not.toBe("");
  });
});

it("finds the formulas", () => {
  expect(formulas.length).toBeGreaterThan(30);
});
