import { omitUndefined } from "../../document/omit-undefined.ts";
import type { FarEnd, Limits, Scatter, Service, Sweep, ToleranceGrade } from "../../model.ts";
import type { Practice } from "../../practice/choices.ts";
import { exactQuantity } from "../quantities.ts";
import { Section } from "../section.ts";
import { gradeOf } from "./limits.ts";

/** What is taken where the brief is silent. */
const defaults = {
  seats: "parallel plates",
  farEnd: "on a seat",
  set: "as wound",
  surface: "unpeened",
  strength: "minimum",
} as const;

/**
 * The section `service` but for its scatter -> how the spring is used, SI. What is wrong in it is noted, and its default stands in.
 */
export function readService(service: Section): Service {
  const seats = wordOrDefault<Service["seats"]>(service, "seats");
  return omitUndefined<Service>({
    seats,
    farEnd: readFarEnd(service, seats),
    set: wordOrDefault<Service["set"]>(service, "set"),
    surface: wordOrDefault<Service["surface"]>(service, "surface"),
    strength: wordOrDefault<Service["strength"]>(service, "strength"),
    cycles: exactQuantity(service, "cycles"),
    frequency: exactQuantity(service, "frequency"),
    temperature: exactQuantity(service, "temperature"),
  });
}

/** Only one kind of seats leaves an end that may swing. */
function readFarEnd(service: Section, seats: Service["seats"]): FarEnd | undefined {
  if (seats === "clamped and free") return wordOrDefault<FarEnd>(service, "farEnd");
  if (!service.has("farEnd")) return undefined;
  return service.problem(
    "farEnd",
    "bothEndsHeld",
    `seats ${seats} hold both ends`,
    "leave it out, or write seats: clamped and free",
  );
}

function wordOrDefault<Word extends string>(service: Section, name: keyof typeof defaults): Word {
  if (!service.has(name)) service.takeDefault(name, defaults[name], "default of coilsieve");
  return service.word<Word>(name) ?? (defaults[name] as string as Word);
}

const DRAWS = { usual: 2000, least: 2, most: 100_000 };
const SEED = { usual: 1, most: 2 ** 32 - 1 };

/** What stands around the scatter of a brief. */
interface Around {
  readonly practice: Practice;
  readonly limits: Limits;
  /** Undefined where it is wrong already. */
  readonly sweep: Sweep | undefined;
  readonly nested: boolean;
}

/**
 * The section `service.scatter` -> how made springs vary, SI; undefined where it is left out. A tolerance that nobody publishes
 * must be stated; every other one is noted as taken.
 */
export function readScatter(service: Section, around: Around): Scatter | undefined {
  if (!service.has("scatter")) return undefined;
  const section = service.section("scatter");
  if (!(section instanceof Section)) return undefined;
  const { practice, sweep, nested } = around;
  if (nested) section.problem("", "nestedScatter", "beside nested springs", "single springs are drawn, not pairs; leave it out");
  if (sweep) checkPublished(section, sweep, practice);
  const { turns, shearModulus } = practice.tolerance;
  if (!section.has("shape")) section.takeDefault("shape", "normal", "default of coilsieve");
  const grade = readGrade(section, around);
  return omitUndefined<Scatter>({
    draws: wholeOrDefault(section, "draws", DRAWS),
    shape: section.word<Scatter["shape"]>("shape") ?? "normal",
    seed: wholeOrDefault(section, "seed", { ...SEED, least: 0 }),
    grade,
    wireDiameter: tolerance(section, "wireDiameter", "as the standard of the wire has it", wireSources(sweep, practice)),
    coilDiameter: tolerance(section, "coilDiameter", "by the grade", practice.tolerance.source),
    freeLength: tolerance(section, "freeLength", "by the grade", practice.tolerance.source),
    turns: tolerance(section, "turns", String(turns.value), turns.source) ?? turns.value,
    modulus: readModulus(section, shearModulus) ?? shearModulus.value,
  });
}

/** A whole number between two ends; the usual one is noted where the brief is silent. */
function wholeOrDefault(
  section: Section,
  name: "draws" | "seed",
  { usual, least, most }: { readonly usual: number; readonly least: number; readonly most: number },
): number {
  if (!section.has(name)) section.takeDefault(name, String(usual), "default of coilsieve");
  const value = section.has(name) ? exactQuantity(section, name) : usual;
  if (value === undefined) return usual;
  if (Number.isInteger(value) && value >= least && value <= most) return value;
  section.problem(name, "range", `${section.scalar(name)} is not possible`, `write a whole number from ${least} to ${most}`);
  return usual;
}

/** The grade that the brief states here or asks of the load, else the practice's usual one. */
function readGrade(section: Section, { practice: { tolerance, title }, limits }: Around): ToleranceGrade {
  const { loadTolerance } = limits;
  const asked = loadTolerance === "off" ? undefined : loadTolerance.grade;
  if (section.has("grade")) return gradeOf(section, tolerance, title) ?? tolerance.usual;
  const grade = asked ?? tolerance.usual;
  const needed = !section.has("coilDiameter") || !section.has("freeLength");
  if (needed) section.takeDefault("grade", String(grade), asked === undefined ? tolerance.source : "limits.loadTolerance");
  return grade;
}

/** A tolerance that is stated; what stands in for it is noted. */
function tolerance(
  section: Section,
  name: "wireDiameter" | "coilDiameter" | "freeLength" | "turns" | "modulus",
  taken: string,
  source: string,
): number | undefined {
  if (section.has(name)) return exactQuantity(section, name);
  section.takeDefault(name, taken, source);
  return undefined;
}

function readModulus(section: Section, { value, source }: Practice["tolerance"]["shearModulus"]): number | undefined {
  const modulus = tolerance(section, "modulus", `${100 * value} %`, source);
  if (modulus === undefined || modulus < 1) return modulus;
  return section.problem("modulus", "range", `${section.scalar("modulus")} leaves no stiffness`, "write less than 100 %");
}

function wireSources(sweep: Sweep | undefined, { wireDeviation }: Practice): string {
  const own = sweep?.materials.map(({ wireTolerance }) => wireTolerance !== undefined) ?? [];
  return [
    ...(own.includes(true) ? ["the material's file"] : []),
    ...(wireDeviation !== null && own.includes(false) ? [wireDeviation.source] : []),
  ].join("; ");
}

/** Notes a tolerance that is left to a standard which has none for a material or an end style. */
function checkPublished(section: Section, { materials, ends }: Sweep, { tolerance, wireDeviation, title }: Practice): void {
  const note = (name: string, got: string, want: string) => section.problem(name, "noTolerance", got, want);
  const without = materials.filter(({ wireTolerance }) => wireTolerance === undefined).map(({ name }) => name);
  if (!section.has("wireDiameter") && wireDeviation === null && without.length > 0) {
    const got = `is missing, and no tolerance on wire of ${without.join(", ")} is at hand`;
    note("wireDiameter", got, "write wireDiameter: 0.02 mm, or leave the material out");
  }
  const open = ends.filter((style) => !tolerance.lengthOf(style)).map(({ name }) => name);
  if (!section.has("freeLength") && open.length > 0) {
    const got = `is missing, and ${title} has no tolerance on the length of ${open.join(", ")} ends`;
    note("freeLength", got, "write freeLength: 0.5 mm, or leave the end style out");
  }
}
