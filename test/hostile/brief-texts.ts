import fc from "fast-check";

/** Random briefs as a person would type them, round a spring that exists: right by construction. All invented. */

const share = fc.double({ min: 0, max: 1, noNaN: true });
const dice = fc.record({
  practice: fc.constantFrom("handbook", "en13906"),
  inches: fc.boolean(),
  load: fc.constantFrom("deflection", "points", "pinnedPoints", "ratePoint", "rateForce"),
  turns: fc.constantFrom("quarter", "half", "whole"),
  ends: fc.subarray(["squared", "squared-ground"], { minLength: 1 }),
  wires: fc.subarray(["iso-r10", "iso-r20", "en-10270", "us-music", "swg"], { minLength: 1 }),
  materials: fc.subarray(["astm-a228", "en-sm", "en-dh", "astm-a229"], { minLength: 1 }),
  diameter: share,
  index: share,
  active: share,
  gap: share,
  work: share,
  width: share,
  room: share,
  diameters: fc.constantFrom("left out", "exact", "step"),
  asked: fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }),
  size: fc.integer({ min: -3, max: 3 }),
  title: fc.string({ maxLength: 30 }),
});

type Dice = typeof dice extends fc.Arbitrary<infer T> ? T : never;

/**
 * Texts of briefs.
 *
 * @param sized  true: springs from a thousandth to a thousand times their size, of which nothing need fit
 */
export function briefTexts(sized: boolean): fc.Arbitrary<string> {
  return dice.map((thrown) => textOf(thrown, sized ? 10 ** thrown.size : 1));
}

const between = (part: number, low: number, high: number): number => low + part * (high - low);

function textOf(thrown: Dice, size: number): string {
  const { inches, practice, turns, ends, wires, materials, asked } = thrown;
  const length = (metres: number) => (inches ? `${(metres * size) / 0.0254} in` : `${metres * size * 1000} mm`);
  const force = (newtons: number) => (inches ? `${(newtons * size) / 4.4482216152605} lbf` : `${newtons * size} N`);
  const rate = (value: number) => (inches ? `${(value * 0.0254) / 4.4482216152605} lbf/in` : `${value / 1000} N/mm`);

  const d = between(thrown.diameter, 0.5e-3, 4e-3);
  const D = d * between(thrown.index, 5, 11);
  const active = between(thrown.active, 4, 12);
  const travel = active * d * between(thrown.gap, 0.5, 3);
  const free = (active + 2) * d + travel;
  const k = (80e9 * d ** 4) / (8 * D ** 3 * active);
  const most = travel * between(thrown.work, 0.5, 0.8);
  const wide = between(thrown.width, 0.05, 0.3);
  const around = (text: (value: number) => string, value: number) =>
    `{ min: ${text(value * (1 - wide))}, max: ${text(value * (1 + wide))} }`;
  const point = (y: number, stated: string) => `{ length: ${length(free - y)}, force: ${stated} }`;

  const loads = {
    deflection: `{ force: ${force(k * most)}, deflection: ${length(most)} }`,
    points: `{ points: [${point(most / 2, around(force, (k * most) / 2))}, ${point(most, around(force, k * most))}] }`,
    pinnedPoints: `{ points: [${point(most / 2, `${force((k * most) / 2)} ± 10 %`)}, ${point(most, force(k * most))}] }`,
    ratePoint: `{ rate: ${around(rate, k)}, points: [${point(most, force(k * most))}] }`,
    rateForce: `{ rate: ${around(rate, k)}, largestForce: ${force(k * most)} }`,
  };
  const pinned = thrown.load === "deflection" || thrown.load === "pinnedPoints";
  const roomy = between(thrown.room, 1.05, 1.6);
  const diameters = {
    "left out": "",
    exact: ", meanDiameter: exact",
    step: pinned ? "" : `, meanDiameter: { step: ${length(d / 8 / size)} }`,
  };
  return `title: ${JSON.stringify(`x${thrown.title}`)}
practice: ${practice}
load: ${loads[thrown.load]}
sweep: { wires: [${wires}], materials: [${materials}], ends: [${ends}], turns: ${turns}${diameters[thrown.diameters]} }
envelope:
  solidLength: { max: ${length(free * 10)} }
${asked[0] ? `  bore: ${length((D + d) * roomy)}\n` : ""}${asked[1] ? `  rod: ${length((D - d) / roomy)}\n` : ""}\
${asked[2] ? `  freeLength: { max: ${length(free * roomy)} }\n` : ""}\
service:
  seats: ${asked[3] ? "pivots" : "guided"}
${asked[4] ? "  frequency: 5 Hz\n" : ""}${asked[5] ? "  temperature: 80 degC\n" : ""}\
rank: ${asked[6] ? "[solidSafety, mass]" : "[outsideDiameter]"}
`;
}
