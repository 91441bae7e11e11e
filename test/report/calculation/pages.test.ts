import { describe, expect, it } from "vitest";
import { calculationOf } from "../../../src/report/calculation/calculation.ts";
import { calculationFragment } from "../../../src/report/calculation/html.ts";
import { calculationPage } from "../../../src/report/calculation/page.ts";
import { printedValue } from "../../../src/report/calculation/printed.ts";
import { calculationText } from "../../../src/report/calculation/text.ts";
import { screeningWords } from "../../../src/report/text/labels.ts";
import { cases, designOf } from "./designs.ts";

const [first] = cases;
if (first === undefined) throw new Error("there is no case");
const design = designOf(first);
const plain = { width: 80, colour: false };

describe("the working as text", () => {
  it.each(cases)("of $name is no wider than the terminal and shows every figure in order", (one) => {
    const working = calculationOf(one.brief, designOf(one));
    const text = calculationText(working, plain);
    expect(text.split("\n").filter((line) => line.length > 80)).toEqual([]);
    let at = 0;
    for (const step of working.chapters.flatMap(({ steps }) => steps)) {
      at = text.indexOf(`\n  ${step.symbol} `, at);
      expect(at, step.symbol).toBeGreaterThan(0);
      // Lines are broken at spaces, so a figure may stand on two.
      expect(text.slice(at).replace(/\s+/g, " ")).toContain(`= ${printedValue(step)}`);
    }
  });

  it("writes each derived figure as equation, numbers put in, result", () => {
    const text = calculationText(calculationOf(first.brief, design), plain);
    expect(text).toContain(
      [
        "        = G * d^4 / (8 * D^3 * Na)",
        "        = 81500 MPa * (2 mm)^4 / (8 * (16.3 mm)^3 * 7.25)",
        "        = 5.19143 N/mm",
      ].join("\n"),
    );
  });

  it("ends with the cautions, the screening words last", () => {
    const text = calculationText(calculationOf(first.brief, design), plain);
    expect(text.trimEnd().split("\n\n").at(-1)?.replace(/\s+/g, " ")).toMatch(new RegExp(`Caution: ${screeningWords}$`));
  });

  it("lets no text of the brief act on a terminal", () => {
    const working = calculationOf({ ...first.brief, title: "\u001b[31mred" }, design);
    expect(calculationText(working, plain)).toContain("Working: \\x1b[31mred");
  });

  it("makes headings bold only where the terminal takes it", () => {
    const working = calculationOf(first.brief, design);
    expect(calculationText(working, plain)).not.toContain("\u001b");
    expect(calculationText(working, { width: 80, colour: true })).toContain("\u001b[1m2. Coil\u001b[22m");
  });
});

describe("the working as HTML", () => {
  it("shows every step with its source, and the cautions at the foot", () => {
    const fragment = calculationFragment(first.brief, design);
    const steps = calculationOf(first.brief, design).chapters.flatMap((chapter) => chapter.steps);
    expect(fragment.match(/<tr><th scope="row">/g)).toHaveLength(steps.length);
    expect(fragment.match(/<span class="source">[^<]+<\/span>/g)).toHaveLength(steps.length);
    expect(fragment.slice(fragment.indexOf("<footer>"))).toContain(screeningWords);
  });

  it("takes no text of the brief for markup", () => {
    const fragment = calculationFragment({ ...first.brief, title: "<img src=x onerror=alert(1)>" }, design);
    expect(fragment).not.toContain("<img");
    expect(fragment).toContain("&lt;img");
  });

  it("is a page that runs nothing, fetches nothing and applies only its own style", async () => {
    const page = await calculationPage(first.brief, design);
    expect(page).toMatch(/content="default-src 'none'; style-src 'sha256-[\w+/=]+'; base-uri 'none'; form-action 'none'"/);
    expect(page).not.toMatch(/<script|<link|\ssrc=|\sstyle=|url\(/);
    const style = /<style>([\s\S]*)<\/style>/.exec(page)?.[1] as string;
    const digest = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(style));
    expect(page).toContain(`sha256-${Buffer.from(digest).toString("base64")}`);
  });
});

describe("a working", () => {
  it("leaves brief and design as they were", () => {
    const before = structuredClone({ brief: first.brief, design });
    calculationOf(first.brief, design);
    expect({ brief: first.brief, design }).toEqual(before);
  });

  it("is refused for a design that is not of the brief", () => {
    expect(() => calculationOf(first.brief, { ...design, material: "elsewhere" })).toThrow("not of this brief");
  });
});
