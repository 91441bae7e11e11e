import dxfParser, { type DxfParser, type IArcEntity, type IEntity, type ILineEntity, type ITextEntity } from "dxf-parser";
import { describe, expect, it } from "vitest";
import type { Brief, EndStyle } from "../../../src/model.ts";
import { springDxf } from "../../../src/report/solid/dxf.ts";
import { brief, ends, spring } from "../fixture.ts";

const named = (style: string) => ends.find(({ name }) => name === style) as EndStyle;
const drawn = (style: string, changes: Parameters<typeof spring>[0] = {}, asked: Partial<Brief> = {}) =>
  springDxf({ ...brief, ...asked }, spring({ endStyle: named(style), ...changes }));

/** The package exports its class alone, which its types do not know. */
const Reader = dxfParser as unknown as typeof DxfParser;

function read(text: string): IEntity[] {
  const drawing = new Reader().parseSync(text);
  if (drawing === null) throw new Error("the reader gives nothing");
  return drawing.entities;
}

const isLine = (one: IEntity): one is ILineEntity => one.type === "LINE";
const isArc = (one: IEntity): one is IArcEntity => one.type === "ARC";
const wordsOf = (entities: readonly IEntity[]) =>
  entities.filter((one): one is ITextEntity => one.type === "TEXT").map(({ text }) => text);

/** Points of the edges of each view of the spring, the topmost view first. */
function views(text: string): [x: number, y: number][][] {
  const entities = read(text);
  const axes = entities
    .filter(isLine)
    .filter(({ layer }) => layer === "AXIS")
    .map(({ vertices }) => vertices[0]!.y);
  const own = entities.filter(({ layer }) => layer === "SPRING");
  const points = own.flatMap((one): [number, number][] => {
    if (isLine(one)) return one.vertices.map(({ x, y }) => [x, y]);
    if (!isArc(one)) return [];
    const { center, radius, startAngle, endAngle } = one;
    const sweep = endAngle < startAngle ? endAngle - startAngle + 2 * Math.PI : endAngle - startAngle;
    return Array.from({ length: 91 }, (_, i) => {
      const angle = startAngle + (sweep * i) / 90;
      return [center.x + radius * Math.cos(angle), center.y + radius * Math.sin(angle)];
    });
  });
  return axes.map((axis) =>
    points.filter(([, y]) => axes.every((other) => Math.abs(y - axis) <= Math.abs(y - other))).map(([x, y]) => [x, y - axis]),
  );
}

const span = (values: readonly number[]) => [Math.min(...values), Math.max(...values)] as const;

describe("the drawing for CAD", () => {
  it.each([
    ["squared", { totalTurns: 8.75 }, "left"],
    ["squared-ground", {}, "right"],
    ["squared-ground", { totalTurns: 8.75 }, "right"],
    ["squared-ground", { totalTurns: 8.25 }, "left"],
    ["plain", { totalTurns: 8.5 }, "right"],
    ["plain-ground", {}, "left"],
  ] as const)("of a %s spring shows it free and at each load point, full size, from its seat", (style, changes, hand) => {
    const text = drawn(style, changes, { order: { hand } });
    expect(text).toMatch(/^[ -~\n]*$/);
    expect(new Set(read(text).map(({ type }) => type))).toEqual(new Set(["LINE", "ARC", "TEXT"]));
    const shown = views(text);
    expect(shown).toHaveLength(3);
    for (const [i, points] of shown.entries()) {
      const [left, right] = span(points.map(([x]) => x));
      // A straight bar reaches a hair less far than the wire.
      expect(Math.abs(left)).toBeLessThan(0.1);
      expect(left).toBeGreaterThan(-1e-6);
      expect(Math.abs(right - [58, 50, 38][i]!)).toBeLessThan(0.1);
      if (style.endsWith("ground")) expect(right).toBeLessThan([58, 50, 38][i]! + 0.01);
      const [low, high] = span(points.map(([, y]) => y));
      expect(high).toBeCloseTo(-low, 2);
      // Grown under load, from 18 mm.
      expect(high).toBeGreaterThanOrEqual(9 - 1e-6);
      expect(high).toBeLessThan(9.1);
    }
  });

  it("draws a front bar by two lines and each crown by an arc of the wire, so that edges meet", () => {
    const entities = read(drawn("squared", { totalTurns: 9 })).filter(({ layer }) => layer === "SPRING");
    for (const arc of entities.filter(isArc)) expect(arc.radius).toBeCloseTo(1, 6);
    // 17 crowns between the half turns, the first end, and the last one, a whole circle in two arcs, in each of three views.
    expect(entities.filter(isArc)).toHaveLength(3 * 20);
    const endsOf = (one: IEntity) => {
      if (isLine(one)) return one.vertices.map(({ x, y }) => [x, y] as const);
      if (!isArc(one)) return [];
      const { center, radius, startAngle, endAngle } = one;
      return [startAngle, endAngle].map(
        (angle) => [center.x + radius * Math.cos(angle), center.y + radius * Math.sin(angle)] as const,
      );
    };
    const loose = entities
      .filter(isArc)
      .flatMap((arc) =>
        endsOf(arc).filter(
          ([x, y]) => !entities.some((other) => other !== arc && endsOf(other).some(([a, b]) => Math.hypot(a - x, b - y) < 1e-4)),
        ),
      );
    expect(loose).toEqual([]);
  });

  it("gives the dimensions of the data sheet, wire, ends and hand in words", () => {
    const words = wordsOf(read(drawn("squared-ground")));
    const shown = [
      "Wire diameter",
      "2",
      "Free length",
      "58",
      "(18)",
      "(5.685 N/mm)",
      "squared-ground",
      "%%c 18 mm",
      "free 58 mm",
    ];
    for (const text of [...shown, "closed 50 mm, 45.48 N"]) expect(words).toContain(text);
    expect(words).toContain("right; the order does not state it");
    expect(words.some((text) => /^This drawing is generated by coilsieve .*, screening only\.$/.test(text))).toBe(true);
  });

  it("is in inches where the brief is, and says so", () => {
    const text = drawn("squared", {}, { units: { length: "in", force: "lbf" } });
    expect(text).toContain("$INSUNITS\n70\n1\n");
    const [, right] = span(views(text)[0]!.map(([x]) => x));
    // 58 mm in inches of 25.4 mm
    expect(right).toBeCloseTo(58 / 25.4, 4);
    expect(wordsOf(read(text)).some((words) => words.startsWith("Dimensions in in;"))).toBe(true);
  });

  it("keeps a title in one line of ASCII, whatever it holds", () => {
    const text = drawn("squared", {}, { title: "Größe\n0\nEOF 100%%c ± \\P" });
    expect(text).toMatch(/^[ -~\n]*$/);
    const [words = ""] = wordsOf(read(text)).filter((one) => one.startsWith("Gr"));
    expect(words).toContain("Gr\\U+00f6\\U+00dfe");
    expect(words).toContain("100%%%%%%c %%p \\U+005cP");
    expect(read(text).length).toBe(read(drawn("squared")).length);
  });
});
