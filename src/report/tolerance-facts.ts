import type { Brief, Design, PointTolerance, ToleranceGrade, Units } from "../model.ts";
import { show } from "../units/show.ts";
import type { Facts } from "./facts.ts";
import { gradeWords, toleranceSentence } from "./sheet-tolerances.ts";

const UNKNOWN = "not in its tables";

/** What the maker of a spring may miss by, the room that this leaves, and the worst case. */
export function toleranceFacts(brief: Brief, design: Design): Facts {
  const { units } = brief;
  const { tolerance } = design;
  const { wireDiameter, coilDiameter, freeLength, coarsestGrade, boreRoom, rodRoom } = tolerance;
  const plusMinus = (value: number | null) => (value === null ? UNKNOWN : `± ${show(value, "length", units, 3)}`);
  const hasWorst = tolerance.points.some(({ leastForce }) => leastForce !== null);
  return {
    heading: "What the maker may miss by",
    entries: [
      ["wire diameter", plusMinus(wireDiameter)],
      ["coil diameter", plusMinus(coilDiameter)],
      ["free length", plusMinus(freeLength)],
      ...(boreRoom === undefined ? [] : [["left in the bore beyond its clearance", roomWords(boreRoom, units)] as const]),
      ...(rodRoom === undefined ? [] : [["left over the rod beyond its clearance", roomWords(rodRoom, units)] as const]),
      ...(coarsestGrade === undefined ? [] : [["coarsest grade that keeps every force", coarsestWords(coarsestGrade)] as const]),
    ],
    ...(tolerance.points.length === 0 ? {} : { table: forceTable(tolerance.points, hasWorst, units) }),
    notes: [
      toleranceSentence(brief, design),
      ...(hasWorst
        ? ["Worst case: every dimension and the modulus at its wrong end at once. It says what is possible, not what is likely."]
        : []),
    ],
  };
}

function coarsestWords(grade: ToleranceGrade | "notKnown" | null): string {
  if (grade === null) return "none";
  return grade === "notKnown" ? UNKNOWN : gradeWords(grade);
}

/** Room with the coil at the wrong end of its tolerance. */
function roomWords(room: number | null, units: Units): string {
  if (room === null) return UNKNOWN;
  return room < 0 ? `${show(-room, "length", units, 3)} too little` : show(room, "length", units, 3);
}

function forceTable(points: readonly PointTolerance[], hasWorst: boolean, units: Units): NonNullable<Facts["table"]> {
  const force = (value: number) => show(value, "force", units);
  const worst = ({ leastForce, greatestForce }: PointTolerance) =>
    leastForce === null || greatestForce === null ? UNKNOWN : `${force(leastForce)} to ${force(greatestForce)}`;
  return {
    heads: ["by grade", ...(hasWorst ? ["worst case"] : [])],
    rows: points.map((point) => [
      `force at ${point.name}`,
      point.force === null ? UNKNOWN : `± ${show(point.force, "force", units, 3)}`,
      ...(hasWorst ? [worst(point)] : []),
    ]),
  };
}
