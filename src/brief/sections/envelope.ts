import { omitUndefined } from "../../document/omit-undefined.ts";
import type { Clearance, Envelope, Load, Quantity, Window } from "../../model.ts";
import { asWritten, exactQuantity, requirement, window } from "../quantities.ts";
import type { Section } from "../section.ts";

/**
 * The section `envelope` -> the room the spring works in, SI. What is wrong in it is left out and noted.
 *
 * @param nested  whether a clearance is also left between two springs
 */
export function readEnvelope(envelope: Section, nested: boolean): Envelope {
  const bore = oneEnd(envelope, "bore", "min", "the least hole");
  const rod = oneEnd(envelope, "rod", "max", "the largest rod");
  return omitUndefined<Envelope>({
    bore,
    rod,
    clearance: readClearance(envelope, nested),
    outsideDiameter: window(envelope, "outsideDiameter") as Window | undefined,
    insideDiameter: window(envelope, "insideDiameter") as Window | undefined,
    freeLength: window(envelope, "freeLength") as Window | undefined,
    solidLength: window(envelope, "solidLength") as Window | undefined,
  });
}

/** The end of a bore or rod that the spring must live with. */
function oneEnd(envelope: Section, name: string, end: "min" | "max", meaning: string): number | undefined {
  const given: Quantity | undefined = requirement(envelope, name);
  if (given === undefined) return undefined;
  return given[end] ?? envelope.problem(name, "openWindow", `has no ${end}`, `${meaning} counts; write { ${end}: … }`);
}

function readClearance(envelope: Section, nested: boolean): Clearance | undefined {
  const bounded = nested || envelope.has("bore") || envelope.has("rod");
  if (!envelope.has("clearance")) {
    if (bounded) envelope.takeDefault("clearance", "0 %", "none unless asked");
    return undefined;
  }
  if (!bounded) {
    return envelope.problem(
      "clearance",
      "contradiction",
      "stands without bore or rod",
      "give the bore or rod that it is left from",
    );
  }
  const isShare = envelope.holdsText("clearance") && envelope.scalar("clearance")?.endsWith("%");
  if (isShare) {
    const share = exactQuantity(envelope, "clearance", { dimension: "share", sign: "notNegative" });
    return share === undefined ? undefined : { share };
  }
  const length = exactQuantity(envelope, "clearance");
  return length === undefined ? undefined : { length };
}

/** Notes where no spring could be inside the envelope, or none that does what the load asks. */
export function checkEnvelope(section: Section, envelope: Envelope, load: Load | undefined): void {
  const { bore, rod, clearance, outsideDiameter, insideDiameter, freeLength, solidLength } = envelope;
  const room = (diameter: number) =>
    clearance === undefined ? 0 : "length" in clearance ? clearance.length : clearance.share * diameter;
  const hole = bore === undefined ? undefined : bore - room(bore);
  const inner = rod === undefined ? undefined : rod + room(rod);
  const less = clearance === undefined ? "" : " less clearance";
  const plus = clearance === undefined ? "" : " plus clearance";

  type Bound = readonly [words: string, value: number | undefined];
  const below = (name: string, [lower, low]: Bound, [upper, high]: Bound, equalFits = false) => {
    if (low === undefined || high === undefined || low < high || (equalFits && low === high)) return;
    const { asked } = section.reading;
    const shown = (length: number) => asked.find(({ value }) => value === length)?.text ?? asWritten(length, "length", asked);
    const got = `${lower} (${shown(low)}) is not below ${upper} (${shown(high)})`;
    section.problem(name, "contradiction", got, "no spring fits between them (swapped?)");
  };
  below(rod === undefined ? "" : "rod", [`the rod${plus}`, inner], [`the bore${less}`, hole]);
  below("outsideDiameter", ["outsideDiameter.min", outsideDiameter?.min], [`the bore${less}`, hole], true);
  below("insideDiameter", ["insideDiameter.min", insideDiameter?.min], ["outsideDiameter.max", outsideDiameter?.max]);
  below("insideDiameter", ["insideDiameter.min", insideDiameter?.min], [`the bore${less}`, hole]);
  below("outsideDiameter", [`the rod${plus}`, inner], ["outsideDiameter.max", outsideDiameter?.max]);
  below("freeLength", ["solidLength.min", solidLength?.min], ["freeLength.max", freeLength?.max], true);

  const [words, length, unloaded] = longestLength(load);
  below("freeLength", [words, length], ["freeLength.max", freeLength?.max], unloaded);
}

/** The length that the free length must pass, in words and m, and whether it may be the free length itself. */
function longestLength(load: Load | undefined): readonly [string, number | undefined, boolean] {
  switch (load?.kind) {
    case "points":
    case "rateAndPoint": {
      const points = load.kind === "points" ? load.points : [load.point];
      const longest = points.reduce((a, b) => (b.length > a.length ? b : a));
      return [`the length at ${longest.name}`, longest.length, longest.force.min === 0];
    }
    case "forceAtDeflection":
      return ["the deflection", load.deflection, false];
    default:
      return ["", undefined, false];
  }
}
