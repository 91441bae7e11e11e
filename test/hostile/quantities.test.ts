import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { reachOf, readQuantity, readToleranced } from "../../src/units/read.ts";
import { random } from "./answer.ts";

/** What mathjs would run, were its parser reachable. */
const programs = [
  "import({ a: 1 })",
  'evaluate("1 mm")',
  "1 mm; cos = 0",
  "f(x) = x",
  "createUnit('foo')",
  "2 * 3 mm",
  "sqrt(4) mm",
  "pi mm",
  "[1, 2] mm",
  "1 mm to in",
  "1 constructor",
  "1 __proto__",
  "1 toString",
  "1 mm.constructor",
  'cos.constructor("return process")()',
];

describe("a quantity is never run", () => {
  it.each(programs)("%s is not read", (text) => {
    expect(readQuantity(text, "length")).toHaveProperty("code");
    expect(readToleranced(text, "length")).toHaveProperty("code");
  });

  it("for the source takes mathjs's units alone, and the program carries no parser of expressions", () => {
    const imported = [...readFileSync("src/units/units.ts", "utf8").matchAll(/import \{([^}]*)\} from "mathjs/g)];
    const names = imported.flatMap(([, list = ""]) => list.split(",").map((name) => name.trim()));
    expect(names).toContain("createUnitClass");
    expect(names.filter((name) => /eval|parse|compile|help|chain|simplify|derivative/i.test(name))).toEqual([]);
    for (const file of ["read", "units"])
      expect(readFileSync(`src/units/${file}.ts`, "utf8")).not.toMatch(/\b(evaluate|parse|compile|parser)\s*\(/);
  });
});

const dimensions = fc.constantFrom("length", "force", "rate", "stress", "temperature", "share", "number", "price", "frequency");
const words = fc.constantFrom(
  ..."1 0 -0 .5 1e308 1e-308 1e15 9e14 mm in inch N lbf / * ^ ^2 % degC degF K kg ± +/- , . ( ) e E + -".split(" "),
);

describe("a quantity of any text is a number within reach, or a sentence", () => {
  const text = fc.oneof(
    fc.string({ maxLength: 90 }),
    fc.array(words, { maxLength: 6 }).map((parts) => parts.join(" ")),
    fc.array(words, { maxLength: 6 }).map((parts) => parts.join("")),
  );

  it("alone and with a tolerance", () => {
    fc.assert(
      fc.property(text, dimensions, (typed, dimension) => {
        const reach = reachOf(dimension);
        const read = readQuantity(typed, dimension);
        if ("value" in read) {
          const size = Math.abs(read.value);
          expect(Object.is(read.value, -0)).toBe(false);
          expect(size === 0 || (size >= reach.least && size <= reach.greatest)).toBe(true);
        } else expect(`${read.got}; ${read.want}`).not.toMatch(/undefined|\[object/);
        const toleranced = readToleranced(typed, dimension);
        if ("nominal" in toleranced) {
          const { min, nominal, max } = toleranced;
          expect(min <= nominal && nominal <= max && max <= reach.greatest).toBe(true);
        }
      }),
      random(50),
    );
  });
});
