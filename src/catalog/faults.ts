import type { Confidence, Material, Strength, WireSeries } from "../model.ts";

/** Two ratios of sizes closer than this, as a fraction, are one. */
const SAME = 1e-3;

/**
 * The widest step between two sizes that a shipped file has as it was read, as a ratio: a wider one is a row that got lost. Of a class
 * of sizes the step is its width. The first pattern that fits a name counts.
 */
const WIDEST: readonly (readonly [name: RegExp, ratio: number])[] = [
  [/^astm-a22[789]$/, 1.25],
  [/^astm-a23[12]$/, 1.6],
  [/^astm-a23[12]m$/, 1.167],
  [/^astm-a313-302$/, 1.167],
  [/^astm-a313-631$/, 1.45],
  [/^en-1\.4310-/, 1.5],
  [/^en-1\.4401$/, 1.75],
  [/^en-1\.4568/, 1.334],
  [/^en-cusn6-3-quarter-hard$/, 8],
  [/^en-cu/, 5],
  [/^en-[sd][lmh]$/, 1.334],
  [/^en-fd/, 1.4],
  [/^en-vd/, 3.25],
  [/^gb-/, 1.6],
  [/^is-/, 1.334],
  [/^jis-sw/, 1.334],
  [/^jis-wp/, 2.5],
  [/^awg$/, 92 ** (2 / 39)],
  [/^iso-r10$/, 1.28],
  [/^iso-r20$/, 1.143],
  [/^iso-r40$/, 1.072],
  [/^(en-10270|jis)$/, 1.2],
  [/^swg$/, 1.2],
  [/^us-music$/, 1.334],
  [/^us-(steel|metric)$/, 1.18],
];

/**
 * What is wrong with a shipped material beyond what its reader finds: a strength without a word of confidence, a row whose strength is
 * above that of a thinner one, a hole in its sizes.
 *
 * @param material  as read
 * @returns one text for each fault; does not throw
 */
export function materialFaults({ name, strength }: Material): readonly string[] {
  const rows = strength.minimum?.rows ?? [];
  return [
    ...unsaid(strength).map((what) => `${name}: ${what} says nothing of confidence`),
    ...rows.flatMap(({ diameter, strength: of }, i) =>
      of > (rows[i - 1]?.strength ?? Number.POSITIVE_INFINITY)
        ? [`${name}: the row of ${millimetres(diameter)} is out of sequence: stronger than thinner wire`]
        : [],
    ),
    ...holes(
      name,
      rows.map(({ diameter }) => diameter),
    ),
  ];
}

/** The same of a shipped series: a hole in its sizes. */
export function seriesFaults({ name, wires }: WireSeries): readonly string[] {
  return holes(
    name,
    wires.map(({ diameter }) => diameter),
  );
}

function unsaid({ minimum, fit = [], constant }: Strength): readonly string[] {
  const strengths: readonly (readonly [string, { readonly confidence?: Confidence } | undefined])[] = [
    ["its minimum", minimum],
    ...fit.map((piece) => ["its power law", piece] as const),
    ["its one strength", constant],
  ];
  return strengths.flatMap(([what, one]) => (one !== undefined && one.confidence === undefined ? [what] : []));
}

function holes(name: string, sizes: readonly number[]): readonly string[] {
  if (sizes.length < 2) return [];
  const widest = WIDEST.find(([pattern]) => pattern.test(name))?.[1];
  if (widest === undefined) return [`${name}: no widest step is written down for it`];
  return sizes.flatMap((size, i) => {
    const before = sizes[i - 1] ?? size;
    return size / before > widest * (1 + SAME)
      ? [`${name}: no size between ${millimetres(before)} and ${millimetres(size)}`]
      : [];
  });
}

function millimetres(diameter: number): string {
  return `${Number((1000 * diameter).toPrecision(4))} mm`;
}
