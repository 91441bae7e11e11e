import type { Material, RelaxationPoint } from "../model.ts";
import { checkRising, entryOf, type Field, given, listOf, pairOf, quantityAt, report, textAt } from "./fields.ts";

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
