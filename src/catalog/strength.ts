import type { Confidence, Material, RelaxationPoint, Strength, StrengthFit, StrengthRows, Window } from "../model.ts";
import {
  checkRising,
  type Entry,
  entryOf,
  type Field,
  given,
  listOf,
  oneOrMore,
  pairOf,
  quantityAt,
  quantityOf,
  report,
  textAt,
  wordAt,
} from "./fields.ts";
import { implausible, strengthRange } from "./keys.ts";

/** Two pieces of a fit join where their ends agree to this share; units may differ between them. */
const sameSize = 1e-9;

/**
 * The `strength` of a material: rows that a standard guarantees (`minimum`), power laws (`fit`), or one value for all sizes
 * (`constant` with its `diameter` range). Problems are left on the field's sheet: `noStrength`, `noRows`, `notRising`, `notAPair`,
 * `notJoined`, `notAWindow` and those of the fields.
 *
 * @param field  the value of `strength`
 */
export function readStrength(field: Field): Strength {
  const entry = entryOf(field);
  const { fields } = entry;
  if (!["minimum", "fit", "constant"].some((key) => fields.has(key))) {
    report(field, "noStrength", "no strength came", "give minimum, fit, or constant with its diameter range");
  }
  const diameter = fields.get("diameter");
  if (fields.has("constant") !== (diameter !== undefined)) {
    const example = "{ constant: 1500 MPa, diameter: { min: 1 mm, max: 8 mm } }";
    report(field, "missingKey", "constant and diameter go together", `write ${example}`);
  }
  return {
    ...given(entry, "minimum", readRows),
    ...given(entry, "fit", readFit),
    ...given(entry, "constant", (value) => ({
      value: quantityOf(value),
      diameter: readSizes(diameter),
      ...readConfidence(entry),
    })),
  };
}

/** Rows as read and rows inferred, each list with rising diameters, as one that rises. */
function readRows(field: Field): StrengthRows {
  const entry = entryOf(field);
  const example = "[1 mm, 1980 MPa], the diameter and its strength";
  const rowsAt = (key: "rows" | "inferred") => {
    const list = entry.fields.get(key);
    const fields = list === undefined ? [] : listOf(list, `write rows as ${example}`);
    const rows = fields.map((row) => {
      const [diameter, strength] = pairOf(row, example);
      return { diameter, strength, ...(key === "inferred" ? { inferred: true as const } : {}) };
    });
    checkRising(
      fields,
      rows.map((row) => row.diameter),
      "diameter",
    );
    return rows;
  };
  const rows = [...rowsAt("rows"), ...rowsAt("inferred")].sort((a, b) => a.diameter - b.diameter);
  if (rows.length === 0) report(field, "noRows", "no row came", `write rows as ${example}`);
  if (rows.some(({ diameter }, i) => diameter === rows[i + 1]?.diameter)) {
    report(field, "notRising", "a diameter stands both in rows and in inferred", "write each once");
  }
  return { between: wordAt(entry, "between"), rows, ...readConfidence(entry) };
}

function readFit(field: Field): readonly StrengthFit[] {
  const fields = oneOrMore(field);
  const entries = fields.map((piece) => entryOf(piece));
  const pieces = entries.map(readPiece);
  if (pieces.length === 0) report(field, "noRows", "no piece came", "write { at, value, exponent, diameter } or leave fit out");
  for (const [i, { diameter }] of pieces.entries()) {
    const before = pieces[i - 1]?.diameter.max ?? diameter.min;
    if (Math.abs(diameter.min / before - 1) > sameSize) {
      report(
        fields[i] as Field,
        "notJoined",
        "it does not begin where the piece before it ends",
        "write that diameter as its min",
      );
    }
  }
  return pieces;
}

function readPiece(entry: Entry): StrengthFit {
  const piece = {
    at: quantityAt(entry, "at"),
    value: quantityAt(entry, "value"),
    exponent: quantityAt(entry, "exponent"),
    diameter: readSizes(entry.fields.get("diameter")),
    ...readConfidence(entry),
  };
  const { at, value, exponent, diameter } = piece;
  for (const size of [diameter.min, diameter.max]) {
    const given = value / (size / at) ** exponent;
    const wrong = Number.isNaN(given) ? undefined : implausible(`${(given / 1e6).toPrecision(3)} MPa`, given, strengthRange);
    if (wrong)
      report(entry, wrong.code, `${wrong.got}, which it gives at ${Number((size * 1000).toPrecision(6))} mm`, wrong.want);
  }
  return piece;
}

/** A range of diameters; where it is missing, which is reported elsewhere, its ends are not used. */
function readSizes(field: Field | undefined): Required<Window> {
  if (field === undefined) return { min: Number.NaN, max: Number.NaN };
  const entry = entryOf(field);
  const [min, max] = [quantityAt(entry, "min"), quantityAt(entry, "max")];
  if (min >= max) report(field, "notAWindow", "min is not below max", "write the smaller diameter as min");
  return { min, max };
}

function readConfidence(entry: Entry): { readonly confidence?: Confidence } {
  return given(entry, "confidence", () => wordAt<Confidence>(entry, "confidence"));
}

/** Lower and upper corrected stress that a material endures for a number of cycles. */
export function readFatigue(field: Field): NonNullable<Material["fatigue"]> {
  const entry = entryOf(field);
  if (!entry.fields.has("unpeened") && !entry.fields.has("peened")) {
    report(field, "missingKey", "neither unpeened nor peened came", "write at least one list of stress pairs");
  }
  return {
    source: textAt(entry, "source"),
    cycles: quantityAt(entry, "cycles"),
    ...given(entry, "unpeened", readStressPairs),
    ...given(entry, "peened", readStressPairs),
  };
}

/**
 * Lower and upper stress: the lower rising from row to row, each upper above its lower, and the range between them never growing,
 * as in every such diagram; the walk counts on that.
 */
function readStressPairs(field: Field): (readonly [number, number])[] {
  const example = "[0 MPa, 450 MPa], the lower and the upper stress";
  const rows = listOf(field, `write rows as ${example}`);
  const pairs = rows.map((row) => {
    const [lower, upper] = pairOf(row, example);
    if (upper <= lower) report(row, "notAPair", "the upper stress is not above the lower", `write ${example}`);
    return [lower, upper] as const;
  });
  for (const [i, [lower, upper]] of pairs.entries()) {
    const before = pairs[i - 1];
    const grows = before !== undefined && upper - lower > (before[1] - before[0]) * (1 + 1e-9);
    if (grows)
      report(
        rows[i] as Field,
        "rangeGrows",
        "the range is wider than in the row before",
        "a higher lower stress leaves no wider one",
      );
  }
  checkRising(
    rows,
    pairs.map(([lower]) => lower),
    "lower stress",
  );
  return pairs;
}

/** Published points of lost load: at a temperature and a stress, after a time, the share of load that is gone. */
export function readRelaxation(field: Field): NonNullable<Material["relaxation"]> {
  const entry = entryOf(field);
  const points = entry.fields.get("points");
  const example = "{ temperature: 120 degC, stress: 800 MPa, time: 48 h, loss: 9 % }";
  const rows = points === undefined ? [] : listOf(points, `write rows as ${example}`);
  return {
    source: textAt(entry, "source"),
    points: rows.map((row): RelaxationPoint => {
      const point = entryOf(row);
      return {
        temperature: quantityAt(point, "temperature"),
        stress: quantityAt(point, "stress"),
        time: quantityAt(point, "time"),
        loss: quantityAt(point, "loss"),
      };
    }),
  };
}
