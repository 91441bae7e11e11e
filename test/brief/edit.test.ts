import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BriefValue, briefTexts, editBrief, shownText } from "../../src/brief/edit.ts";
import { readBrief } from "../../src/brief/read.ts";
import { lookupOn } from "../../src/catalog/find.ts";
import { readShelf, readTextBeside } from "../../src/disk/files.ts";
import type { Lookup } from "../../src/model.ts";
import { RANDOM } from "../property/briefs.ts";

const shelf = lookupOn(readShelf(), readTextBeside);

/** Each entry read once: the briefs here are read thousands of times. */
function once<Thing>(find: (name: string, from: string) => Thing): (name: string, from: string) => Thing {
  const known = new Map<string, Thing>();
  return (name, from) => {
    const found = known.get(name) ?? find(name, from);
    known.set(name, found);
    return found;
  };
}
const lookup: Lookup = { series: once(shelf.series), material: once(shelf.material), ends: once(shelf.ends) };
const read = (text: string) => readBrief(text, "reports/brief.yaml", lookup);
const demos = readdirSync("reports")
  .filter((name) => name.endsWith(".yaml"))
  .map((name) => readFileSync(`reports/${name}`, "utf8"))
  .filter((text) => /^sweep:/m.test(text));

const LATCH = `# a latch
practice: handbook
load: { force: 20 N ± 10 %, deflection: 10 mm }   # at full travel
envelope:
  bore: 16 mm      # drilled
  freeLength: { max: 65 mm }
sweep:
  wires: [iso-r20]
  materials:
    - astm-a228   # the usual
    - astm-a313-302
  ends: [squared-ground]
`;

describe("a brief with one value put", () => {
  it.each([
    ["envelope.bore", "17 mm", "  bore: 17 mm      # drilled"],
    ["envelope.freeLength.max", "60 mm", "  freeLength: { max: 60 mm }"],
    ["envelope.freeLength.min", "30 mm", "  freeLength: { max: 65 mm, min: 30 mm }"],
    ["envelope.rod", "7 mm", "  rod: 7 mm"],
    ["load.force", "2.2 lbf", "load: { force: 2.2 lbf, deflection: 10 mm }   # at full travel"],
    ["load.force.min", "18 N", "load: { force: { min: 18 N }, deflection: 10 mm }   # at full travel"],
    ["limits.solidStress.safety", "1.3", "limits: { solidStress: { safety: 1.3 } }"],
    ["limits.clash", "off", "limits: { clash: off }"],
    ["sweep.wires", ["iso-r20", "en-10270"], "  wires: [iso-r20, en-10270]"],
    ["envelope.bore", "0,65 in", '  bore: "0,65 in"      # drilled'],
  ] as const)("has %s at %s and every other byte as its author wrote it", (key, value, line) => {
    const edited = editBrief(LATCH, key, value);
    expect(edited.split("\n")).toContain(line);
    const kept = LATCH.split("\n").filter((one) => !edited.split("\n").includes(one));
    expect(kept.length).toBeLessThan(2);
    expect(briefTexts(edited).get(key)).toEqual(value);
  });

  it("keeps a list that stands on lines of its own, with the comments that remain", () => {
    const edited = editBrief(LATCH, "sweep.materials", ["astm-a228"]);
    expect(shownText(briefTexts(edited).get("sweep.materials"))).toBe("astm-a228");
    expect(edited).toContain("# at full travel");
    expect(edited).toContain("# a latch");
    expect(read(edited).sweep.materials.map(({ name }) => name)).toEqual(["astm-a228"]);
  });

  it("lets a section take the place of a word, and a word that of a section", () => {
    const off = editBrief(LATCH, "limits.clash", "off");
    const share = editBrief(off, "limits.clash.ofDeflection", "0.2");
    expect(read(share).limits.clash).toEqual({ ofDeflection: 0.2 });
    expect(read(editBrief(share, "limits.clash", "off")).limits.clash).toBe("off");
  });

  it("loses a section with its last key", () => {
    const limited = editBrief(LATCH, "limits.index.min", "5");
    expect(editBrief(limited, "limits.index.min", undefined)).toBe(LATCH);
    expect(editBrief(LATCH, "envelope.freeLength.max", undefined)).not.toContain("freeLength");
  });

  it("says nothing new where a key that is not there is taken out", () => {
    expect(editBrief(LATCH, "limits.surge.multiple", undefined)).toBe(LATCH);
  });

  it("edits a point of the load by its number", () => {
    const text = "load:\n  points:\n    - { length: 46 mm, force: { min: 18 N } } # home\n    - { length: 32 mm, force: 40 N }\n";
    expect(editBrief(text, "load.points[1].force.max", "24 N")).toContain("force: { min: 18 N, max: 24 N } } # home");
    expect(shownText(briefTexts(text).get("load.points[2].length"))).toBe("32 mm");
  });

  it("stays JSON where it was JSON", () => {
    const text = JSON.stringify({ practice: "handbook", envelope: { bore: "16 mm" }, service: { cycles: 1e7 } }, null, 2);
    for (const [key, value] of [
      ["envelope.bore", "17 mm"],
      ["limits.index.min", "5"],
      ["sweep.wires", ["a", "b"]],
      ["envelope.bore", undefined],
    ] as const) {
      const edited = editBrief(text, key, value);
      expect(() => JSON.parse(edited)).not.toThrow();
      expect(briefTexts(edited).get(key)).toEqual(value);
    }
  });

  it("keeps line ends as they are", () => {
    const text = LATCH.replaceAll("\n", "\r\n");
    const edited = editBrief(editBrief(text, "envelope.rod", "7 mm"), "limits.clash", "off");
    expect(edited.replaceAll("\r\n", "")).not.toContain("\n");
    expect(read(edited).limits.clash).toBe("off");
  });
});

describe("an edit and the reader of briefs", () => {
  const puts: readonly (readonly [string, BriefValue, RegExp])[] = [
    ["envelope.bore", "41.5 mm", /^envelope/],
    ["envelope.freeLength.max", "99 mm", /^envelope/],
    ["envelope.outsideDiameter.max", "1.5 in", /^envelope/],
    ["limits.solidStress.safety", "1.35", /^limits/],
    ["limits.index.max", "11", /^limits/],
    ["limits.clash.length", "2 mm", /^limits/],
    ["limits.surge.multiple", "12", /^limits/],
    ["sweep.ends", ["squared-ground"], /^sweep/],
    ["rank", ["freeLength", "mass"], /^(rank|yieldFirst)/],
    ["service.temperature", "50 degC", /^service/],
    ["title", 'A "new": title, with # marks', /^title/],
  ];
  const place = fc.record({
    demo: fc.constantFrom(...demos),
    edits: fc.array(fc.constantFrom(...puts), { minLength: 1, maxLength: 5 }),
    form: fc.constantFrom("yaml", "json", "crlf"),
  });
  const inForm = (demo: string, form: string) => {
    if (form === "json") return JSON.stringify(asPlain(demo), null, 2);
    return form === "crlf" ? demo.replaceAll("\n", "\r\n") : demo;
  };

  it("the brief reads as before but for the key that was put, and as before when it is put back", () => {
    fc.assert(
      fc.property(place, ({ demo, edits, form }) => {
        const text = inForm(demo, form);
        const before = read(text);
        let edited = text;
        for (const [key, value, changes] of edits) {
          const was = read(edited);
          edited = editBrief(edited, key, value);
          const is = read(edited);
          expect(briefTexts(edited).get(key)).toEqual(value);
          expect(partsBut(is, changes)).toEqual(partsBut(was, changes));
        }
        for (const [key] of edits) edited = editBrief(edited, key, briefTexts(text).get(key));
        expect(read(edited)).toEqual(before);
      }),
      RANDOM,
    );
  });
});

/** The parts of a brief that a key does not touch. */
function partsBut(brief: ReturnType<typeof read>, changes: RegExp): object {
  const others = <Told extends { readonly key: string }>(told: readonly Told[]) => told.filter(({ key }) => !changes.test(key));
  const parts = { ...brief, asked: others(brief.asked), defaults: others(brief.defaults) };
  return Object.fromEntries(Object.entries(parts).filter(([key]) => !changes.test(key)));
}

/** A YAML brief as plain maps, lists and texts. */
function asPlain(demo: string): object {
  const top: Record<string, unknown> = {};
  for (const [key, value] of briefTexts(demo)) {
    const steps = key.split(/\.|(?=\[)/).map((step) => (step.startsWith("[") ? Number(step.slice(1, -1)) - 1 : step));
    let at = top as Record<string | number, unknown>;
    steps.forEach((step, i) => {
      if (i < steps.length - 1) at[step] ??= typeof steps[i + 1] === "number" ? [] : {};
      else at[step] = value;
      at = at[step] as typeof at;
    });
  }
  return top;
}
