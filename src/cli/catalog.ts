import { readEnds } from "../catalog/ends.ts";
import type { CatalogKind } from "../catalog/find.ts";
import { readMaterial } from "../catalog/materials.ts";
import { headLines } from "../catalog/source-text.ts";
import { readWireSeries } from "../catalog/wires.ts";
import { madeSizes, wirePropertiesAt } from "../constrain/candidate/wire-properties.ts";
import { printOut, readShelf } from "../disk/files.ts";
import type { Confidence, EndStyle, Material, Strength, WireSeries } from "../model.ts";
import { nearestNames, ProblemError } from "../problem.ts";
import { show, showNumber } from "../units/show.ts";

const width = 80;
const indent = "    ";

/** One entry of a catalog as it is listed. */
interface Listing {
  readonly name: string;
  /** What it covers, on one line. */
  readonly covers: string;
  readonly source: string;
  /** What else is told where whole sources are. */
  readonly figures?: string;
}

const kinds: Readonly<Record<CatalogKind, () => readonly Listing[]>> = {
  wires: () => [...readShelf().wires].map(([name, text]) => wireListing(readWireSeries(text, name))),
  materials: () => [...readShelf().materials.values()].map((text) => materialListing(readMaterial(text))),
  ends: () => {
    const { ends } = readShelf();
    const source = headLines(ends.text).join(" ");
    return readEnds(ends).map((style) => endsListing(style, source));
  },
};

/**
 * Prints one catalog with whole sources, or all of them in short.
 *
 * @param kind  as typed; undefined for all
 * @throws ProblemError `unknownName` for a kind that is none
 */
export async function runCatalog(kind: string | undefined): Promise<void> {
  const lines = kind === undefined ? shortLines() : wholeLines(kindNamed(kind)());
  return printOut(`${lines.join("\n")}\n`);
}

function kindNamed(kind: string): () => readonly Listing[] {
  const found = new Map<string, () => readonly Listing[]>(Object.entries(kinds)).get(kind);
  if (found !== undefined) return found;
  const [nearest] = nearestNames(kind, Object.keys(kinds));
  const want = nearest === undefined ? `it takes ${Object.keys(kinds).join(", ")}` : `did you mean ${nearest}?`;
  throw new ProblemError([{ code: "unknownName", key: "catalog", got: `no catalog "${kind}"`, want }]);
}

function shortLines(): readonly string[] {
  const sections = Object.entries(kinds).flatMap(([kind, listings]) => {
    const entries = listings();
    return [
      kind,
      ...entries.flatMap((entry) => [headLine(entry, entries), ...(isLastOfSource(entry, entries) ? [cut(entry.source)] : [])]),
      "",
    ];
  });
  return [...sections, "`coilsieve catalog KIND` gives the whole sources."];
}

function wholeLines(entries: readonly Listing[]): readonly string[] {
  return entries.flatMap((entry) => [
    headLine(entry, entries),
    ...wrapped(entry.figures ?? ""),
    ...(isLastOfSource(entry, entries) ? [...wrapped(entry.source), ""] : []),
  ]);
}

/** One entry on a line, in a column as wide as the longest name of its list. */
function headLine({ name, covers }: Listing, entries: readonly Listing[]): string {
  return `  ${name.padEnd(Math.max(...entries.map((entry) => entry.name.length)))}  ${covers}`;
}

/** Entries of one file share its source, which is printed once, below the last of them. */
function isLastOfSource(entry: Listing, entries: readonly Listing[]): boolean {
  return entries[entries.indexOf(entry) + 1]?.source !== entry.source;
}

function cut(text: string): string {
  const room = width - indent.length;
  return `${indent}${text.length <= room ? text : `${text.slice(0, room - 1).replace(/\s+\S*$/, "")}…`}`;
}

function wrapped(text: string): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/).filter((part) => part !== "")) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= width) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(`${indent}${word}`);
  }
  return lines;
}

function wireListing({ name, source, wires }: WireSeries): Listing {
  const diameters = wires.map(({ diameter }) => diameter);
  return { name, source, covers: `${wires.length} sizes, ${range(Math.min(...diameters), Math.max(...diameters))}` };
}

function materialListing(material: Material): Listing {
  const { name, source, strength, relativeCost } = material;
  const { min, max } = madeSizes(material, "minimum");
  const figures = `${strengthWords(material)}; confidence ${confidenceWords(strength)}`;
  return { name, source, covers: `${range(min, max)}, cost ${relativeCost}`, figures };
}

/** The least strength of the thinnest, a middle and the thickest size that it is read for. */
function strengthWords(material: Material): string {
  const { min, max } = madeSizes(material, "minimum");
  const rows = material.strength.minimum?.rows ?? [];
  const middle = rows[Math.floor(rows.length / 2)]?.diameter ?? Math.sqrt(min * max);
  const units = { length: "mm", force: "N" } as const;
  return [min, middle, max]
    .map((size) => {
      const strength = wirePropertiesAt(material, size, "minimum")?.tensileStrength ?? Number.NaN;
      return `${show(strength, "stress", units)} at ${show(size, "length", units, 3)}`;
    })
    .join(", ");
}

/** How far each of its strengths may be trusted, and which of its rows are inferred. */
function confidenceWords({ minimum, fit = [], constant }: Strength): string {
  const words = (strengths: readonly { readonly confidence?: Confidence }[]) =>
    [...new Set(strengths.map(({ confidence = "not stated" }) => confidence))].join(", ");
  const inferred = minimum?.rows.filter((row) => row.inferred) ?? [];
  const extent = inferred.length === minimum?.rows.length ? "all rows inferred" : `${inferred.length} rows inferred`;
  return [
    ...(minimum ? [`${words([minimum])}${inferred.length > 0 ? `, ${extent}` : ""}`] : []),
    ...(fit.length > 0 ? [`${minimum ? "power law " : ""}${words(fit)}`] : []),
    ...(constant ? [words([constant])] : []),
  ].join("; ");
}

function range(min: number, max: number): string {
  const inUnits = (length: "mm" | "in") => {
    const units = { length, force: "N" } as const;
    return `${showNumber(min, "length", units)} to ${show(max, "length", units)}`;
  };
  return `${inUnits("mm")} (${inUnits("in")})`;
}

function endsListing({ name, deadTurns, solidExtra, closed, ground }: EndStyle, source: string): Listing {
  const shape = `${closed ? "closed" : "open"}, ${ground ? "ground" : "not ground"}`;
  const solid = solidExtra === 0 ? "Nt d" : `(Nt + ${solidExtra}) d`;
  return { name, source, covers: `${shape}; Na = Nt - ${deadTurns}, solid length ${solid}` };
}
