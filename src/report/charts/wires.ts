import type { Funnel, LimitName, Units, WireFunnel } from "../../model.ts";
import { show } from "../../units/show.ts";
import type { Row } from "../html/markup.ts";
import { limitWords } from "../text/labels.ts";
import { bites, countWords, percentText } from "../text/rejections.ts";
import { chartConfig, PAINT, type Theme } from "./scatter.ts";

/** What became of the candidates of one wire size, in one material or in all. */
export interface WireSize extends Funnel {
  /** m */
  readonly diameter: number;
  /** The diameter in the reader's units, unlike that of any other size. */
  readonly label: string;
}

/** What heads the springs that fit, among columns of limits. */
const FITS = "fits";

/** How a limit heads its column: beside wire sizes, `wire` alone would not tell what it refuses. */
function column(limit: LimitName): string {
  return limit === "wire" ? "not sold" : limitWords[limit].label;
}

/** Limits by label, in the order in which a candidate falls. */
const ORDER = Object.keys(limitWords) as LimitName[];

/**
 * The rejection counts by wire size, thinnest first: sizes that several series or materials share are one.
 *
 * @param wires     of a finished sweep
 * @param units     the reader's units
 * @param material  the name of one material; null: all together
 */
export function wireSizes(wires: readonly WireFunnel[], units: Units, material: string | null): WireSize[] {
  const sizes = new Map<string, WireFunnel[]>();
  for (const row of wires) {
    // A window of turns that holds no step leaves nothing to try.
    if (row.walked === 0 || (material !== null && row.material !== material)) continue;
    const key = row.wireDiameter.toPrecision(9);
    sizes.set(key, [...(sizes.get(key) ?? []), row]);
  }
  const rising = [...sizes.values()].sort(([a], [b]) => (a as WireFunnel).wireDiameter - (b as WireFunnel).wireDiameter);
  const diameters = rising.map(([first]) => (first as WireFunnel).wireDiameter);
  const labels = (digits: number) => diameters.map((diameter) => show(diameter, "length", units, digits));
  const told = [4, 5, 6].map(labels).find((texts) => new Set(texts).size === texts.length) ?? labels(9);
  return rising.map((rows, i) => ({ ...sumOf(rows), diameter: diameters[i] as number, label: told[i] as string }));
}

function sumOf(rows: readonly Funnel[]): Funnel {
  const total = (of: (row: Funnel) => number) => rows.reduce((sum, row) => sum + of(row), 0);
  const counts = ORDER.map((limit) => [limit, total(({ rejected }) => rejected[limit] ?? 0)] as const);
  return {
    walked: total(({ walked }) => walked),
    rejected: Object.fromEntries(counts.filter(([, count]) => count > 0)),
    feasible: total(({ feasible }) => feasible),
  };
}

/** The sizes that are made and sold in what is asked; all of them where none is, so that there is something to read. */
export function soldSizes(sizes: readonly WireSize[]): readonly WireSize[] {
  const sold = sizes.filter(isSold);
  return sold.length > 0 ? sold : sizes;
}

function isSold({ walked, rejected }: WireSize): boolean {
  return (rejected.wire ?? 0) < walked;
}

/** Limits at which something of some size fell, in the order in which a candidate falls. */
function limitsMet(sizes: readonly WireSize[]): LimitName[] {
  return ORDER.filter((limit) => sizes.some(({ rejected }) => rejected[limit] !== undefined));
}

/** The map's fields: for each size the limits at which something fell, and what fits. */
export function wireFields(sizes: readonly WireSize[]): WireField[] {
  const limits = limitsMet(sizes);
  return sizes.flatMap(({ label: size, walked, rejected, feasible }, row) => {
    const field = (column: string, place: number, fits: boolean, count: number): WireField[] =>
      count > 0 ? [{ size, row, column, place, fits, count, fraction: count / walked }] : [];
    return [
      ...limits.flatMap((limit, place) => field(column(limit), place, false, rejected[limit] ?? 0)),
      ...field(FITS, limits.length, true, feasible),
    ];
  });
}

/** The same figures as a table: head and rows, every column but the first a number. */
export function wireTable(sizes: readonly WireSize[]): { readonly head: readonly string[]; readonly rows: readonly Row[] } {
  const limits = limitsMet(sizes);
  const count = (number: number) => (number === 0 ? "–" : countWords(number));
  return {
    head: ["wire", "tried", ...limits.map(column), FITS],
    rows: sizes.map(({ label, walked, rejected, feasible }) => [
      label,
      countWords(walked),
      ...limits.map((limit) => count(rejected[limit] ?? 0)),
      count(feasible),
    ]),
  };
}

/**
 * In which sizes something fits, and what holds back thinner and thicker wire.
 *
 * @param sizes  thinnest first
 * @returns such as "Springs fit in 4 of 30 wire sizes, 1.25 mm to 1.6 mm. Thinner wire gets no further than rate (12 sizes) …"
 */
export function wiresSentence(sizes: readonly WireSize[]): string {
  const sold = sizes.filter(isSold);
  const unsold = sizes.length - sold.length;
  const fitting = sold.filter(({ feasible }) => feasible > 0);
  const [first, last] = [fitting[0], fitting.at(-1)];
  const others = unsold === 0 ? "" : ` ${unsold} of the sizes ${unsold === 1 ? "is" : "are"} not made or sold in what is asked.`;
  if (first === undefined || last === undefined) {
    return `Nothing fits in any of ${sizesWords(sizes)}.${stopWords("Their candidates get", sold)}${others}`;
  }
  const range = first === last ? first.label : `${first.label} to ${last.label}`;
  const thinner = sold.filter(({ diameter }) => diameter < first.diameter);
  const thicker = sold.filter(({ diameter }) => diameter > last.diameter);
  return (
    `Springs fit in ${fitting.length} of ${sizesWords(sizes)}, ${range}.` +
    stopWords("Thinner wire gets", thinner) +
    stopWords("Thicker wire gets", thicker) +
    others
  );
}

function sizesWords({ length }: readonly WireSize[]): string {
  return `${length} wire ${length === 1 ? "size" : "sizes"}`;
}

/** How far candidates of some sizes get, as a further sentence; nothing where there are none. */
function stopWords(who: string, sizes: readonly WireSize[]): string {
  return sizes.length === 0 ? "" : ` ${who} no further than ${furthest(sizes)}.`;
}

/** The last limits at which candidates of these sizes fell, most sizes first: "rate (12 sizes) or solid stress (3)". */
function furthest(sizes: readonly WireSize[]): string {
  const stops = new Map<string, number>();
  for (const size of sizes) {
    const { label } = limitWords[lastLimit(size)];
    stops.set(label, (stops.get(label) ?? 0) + 1);
  }
  const most = [...stops].sort(([, a], [, b]) => b - a);
  const words = most.map(([label, count], i) => `${label} (${count}${i > 0 ? "" : count === 1 ? " size" : " sizes"})`);
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;
}

/** The limit that took the last of a size of which nothing fits. */
function lastLimit({ rejected }: WireSize): LimitName {
  return ORDER.findLast((limit) => rejected[limit] !== undefined) as LimitName;
}

/** The size that is of most interest: the first of which something fits, else one of which most get furthest. */
export function nearestSize(sizes: readonly WireSize[]): WireSize | undefined {
  const reach = ({ walked, rejected }: WireSize, limit: LimitName) => (rejected[limit] ?? 0) / walked;
  const fits = sizes.find(({ feasible }) => feasible > 0);
  const last = limitsMet(sizes).at(-1);
  if (fits !== undefined || last === undefined) return fits ?? sizes[0];
  return sizes.reduce((a, b) => (reach(b, last) > reach(a, last) ? b : a));
}

/**
 * What became of the candidates of one size.
 *
 * @returns such as "1.6 mm: 12,400 tried, 340 fit (2.7 %). 61.0 % fell at solid stress, 20.1 % at index."
 */
export function wireSentence(size: WireSize): string {
  const { label, walked, feasible } = size;
  const fit = feasible === 0 ? "none fits" : `${countWords(feasible)} fit (${percentText(feasible / walked)})`;
  const fell = bites(size).map(({ limit, label: at, fraction }, i) => {
    if (limit === "wire") return `${percentText(fraction)} ${i === 0 ? "are " : ""}of material not made or sold in this size`;
    return `${percentText(fraction)} ${i === 0 ? "rejected " : ""}by ${at}`;
  });
  const last = feasible === 0 && fell.length > 1 ? ` The last is rejected by ${limitWords[lastLimit(size)].label}.` : "";
  return `${label}: ${countWords(walked)} tried, ${fit}.${fell.length === 0 ? "" : ` ${fell.join(", ")}.`}${last}`;
}

/** Height of the map, pixels, which the page sets: its rows are lower where they are many. */
export function wiresHeight(sizes: number): number {
  return sizes * (sizes > 48 ? 9 : 15);
}

/** A field of the map: the candidates of a wire that fell at a limit, or its springs that fit. */
export interface WireField {
  /** The wire size, in the reader's units. */
  readonly size: string;
  /** Place of the size, thinnest first. */
  readonly row: number;
  /** The limit by its label, or what heads the column of those that fit. */
  readonly column: string;
  /** Place of the column: limits in the order in which a candidate falls, those that fit last. */
  readonly place: number;
  readonly fits: boolean;
  readonly count: number;
  /** Share of the candidates of this size. */
  readonly fraction: number;
}

/** Fields that are nearly empty still show. */
const FAINTEST = { light: { falls: "#e4e7ea", fits: "#cfe3ec" }, dark: { falls: "#2b333a", fits: "#1f3f4d" } } as const;

/**
 * Wire sizes down, limits across: the darker a field (on dark ground the lighter), the more of that wire's candidates fell there;
 * the last column is what fits. Vega-Lite with named data: `fields`, rows of `WireField`, and `chosen`, one field of the chosen
 * size.
 *
 * @param theme  colours for light or dark ground
 * @returns a plain object without data of its own
 */
export function wiresSpec(theme: Theme): object {
  const paint = PAINT[theme];
  const position = {
    x: {
      field: "column",
      type: "nominal",
      sort: { field: "place", op: "min" },
      axis: { title: null, orient: "top", labelAngle: -40, ticks: false, domain: false, labelLimit: 140, labelOverlap: false },
    },
    y: {
      field: "size",
      type: "nominal",
      sort: { field: "row", op: "min" },
      axis: { title: null, ticks: false, domain: false, labelOverlap: true },
    },
  };
  const fields = (test: string, range: readonly string[]) => ({
    data: { name: "fields" },
    transform: [{ filter: test }],
    mark: { type: "rect", stroke: "transparent", strokeWidth: 1, cursor: "pointer" },
    encoding: {
      ...position,
      color: { field: "fraction", type: "quantitative", scale: { type: "sqrt", domain: [0, 1], range }, legend: null },
    },
  });
  return {
    $schema: "https://vega.github.io/schema/vega-lite/v6.json",
    width: "container",
    height: 100,
    autosize: { type: "fit-x", contains: "padding" },
    // Room for the slanted name of the last column.
    padding: { left: 0, top: 5, right: 48, bottom: 5 },
    layer: [
      fields("!datum.fits", [FAINTEST[theme].falls, paint.ink]),
      fields("datum.fits", [FAINTEST[theme].fits, paint.accent]),
      {
        name: "chosen",
        data: { name: "chosen" },
        mark: { type: "rect", fill: null, stroke: paint.accent, strokeWidth: 2, tooltip: false },
        encoding: { y: position.y, x: { value: 0 }, x2: { value: "width" } },
      },
    ],
    resolve: { scale: { color: "independent" } },
    config: { ...chartConfig(theme), scale: { bandPaddingInner: 0.08 } },
  };
}
