import type {
  ClashAllowance,
  FatigueLine,
  LimitName,
  Limits,
  Service,
  StressFactorName,
  StressLimit,
  ToleranceGrade,
  Window,
} from "../../model.ts";
import type { Practice, Sourced, TolerancePractice } from "../../practice/choices.ts";
import { exactQuantity, window } from "../quantities.ts";
import { Section } from "../section.ts";

/** What the envelope, the service and the catalogs set, in the order in which candidates fall. */
const liftable = [
  "wire",
  "temperature",
  "solidLength",
  "outsideDiameter",
  "insideDiameter",
  "freeLength",
  "hotForce",
] as const satisfies readonly LimitName[];

/**
 * The section `limits` -> thresholds, SI: what the brief gives, else the practice's default, which is noted as taken. What is
 * wrong in it is noted, and the default stands in.
 */
export function readLimits(limits: Section, practice: Practice, service: Service): Limits {
  const { stressFactor } = practice;
  return {
    index: windowOrDefault(limits, "index", practice.index),
    turns: windowOrDefault(limits, "turns", practice.turns),
    clash: readClash(limits, service.cycles === undefined ? practice.clash : practice.clashCyclic),
    workingStress: readWorkingStress(limits, service.set === "removed" ? stressFactor.setRemoved : stressFactor.asWound),
    solidStress: readSolidStress(limits, practice.solidSafety),
    buckling: readOne(limits, "buckling", "safety", practice.bucklingSafety, service.seats !== "guided"),
    surge: readOne(limits, "surge", "multiple", practice.surgeMultiple, service.frequency !== undefined),
    fatigue: readFatigue(limits, practice, service.cycles !== undefined),
    loadTolerance: readLoadTolerance(limits, practice),
    lifted: liftable.filter((name) => isLifted(limits, name)),
  };
}

function windowOrDefault(limits: Section, name: "index" | "turns", { value, source }: Sourced<Required<Window>>): Window | "off" {
  if (!limits.has(name)) limits.takeDefault(name, `{ min: ${value.min}, max: ${value.max} }`, source);
  const given = window(limits, name);
  if (given === "off" || given === undefined) return given ?? value;
  if (given.min === undefined) limits.takeDefault(`${name}.min`, String(value.min), source);
  if (given.max === undefined) limits.takeDefault(`${name}.max`, String(value.max), source);
  const whole = { ...value, ...given };
  if (whole.min > whole.max) {
    const end = given.min === undefined ? "min" : "max";
    const got = `${end} ${value[end]} of the practice leaves no room for what is given`;
    limits.problem(name, "contradiction", got, "give both ends");
  }
  return whole;
}

function readClash(limits: Section, { value, source }: Sourced<ClashAllowance>): ClashAllowance | "off" {
  if (!limits.has("clash")) limits.takeDefault("clash", clashText(value), source);
  const section = limits.section("clash");
  if (!(section instanceof Section) || !limits.has("clash")) return section === "off" ? "off" : value;
  const name = oneOf(section, ["ofDeflection", "ofSolidLength", "length"]);
  const given = name && exactQuantity(section, name);
  return name === undefined || given === undefined ? value : ({ [name]: given } as ClashAllowance);
}

function clashText(allowance: ClashAllowance): string {
  if ("minimumGap" in allowance)
    return `n (0.0015 D²/d + 0.1 d)${allowance.minimumGap === 1 ? "" : ` x ${allowance.minimumGap}`}`;
  const [name, value] = Object.entries(allowance)[0] as [string, number];
  return `{ ${name}: ${value} }`;
}

function readWorkingStress(limits: Section, factorDefault: Sourced<StressFactorName>): Limits["workingStress"] {
  const section = limits.section("workingStress");
  if (!(section instanceof Section) || !limits.has("workingStress")) return "off";
  const limit = stressLimit(section);
  if (!section.has("factor")) section.takeDefault("factor", factorDefault.value, factorDefault.source);
  const factor = section.word<StressFactorName>("factor") ?? factorDefault.value;
  return limit === undefined ? "off" : { ...limit, factor };
}

function readSolidStress(limits: Section, { value, source }: Sourced<number>): StressLimit | "off" {
  if (!limits.has("solidStress")) limits.takeDefault("solidStress", `{ safety: ${value} }`, source);
  const section = limits.section("solidStress");
  if (!(section instanceof Section) || !limits.has("solidStress")) return section === "off" ? "off" : { safety: value };
  return stressLimit(section) ?? { safety: value };
}

function stressLimit(section: Section): StressLimit | undefined {
  const name = oneOf(section, ["max", "safety"]);
  const given = name && exactQuantity(section, name);
  return name === undefined || given === undefined ? undefined : ({ [name]: given } as StressLimit);
}

/** A limit with one threshold; its default is noted only where it will be asked. */
function readOne<Name extends "safety" | "multiple">(
  limits: Section,
  limit: "buckling" | "surge",
  name: Name,
  { value, source }: Sourced<number>,
  asked: boolean,
): Record<Name, number> | "off" {
  const whole = (threshold: number) => ({ [name]: threshold }) as Record<Name, number>;
  if (!limits.has(limit) && asked) limits.takeDefault(limit, `{ ${name}: ${value} }`, source);
  const section = limits.section(limit);
  if (!(section instanceof Section) || !limits.has(limit)) return section === "off" ? "off" : whole(value);
  return whole((section.require(name) ? exactQuantity(section, name) : undefined) ?? value);
}

/** Safety and line of the fatigue limit; their defaults are noted only in cyclic duty. */
function readFatigue(limits: Section, { fatigue }: Practice, cyclic: boolean): Limits["fatigue"] {
  const section = limits.section("fatigue");
  if (section === "off") return "off";
  const given = section instanceof Section && limits.has("fatigue") ? section : undefined;
  const { value, source } = fatigue.safety;
  if (cyclic && !given?.has("safety")) limits.takeDefault("fatigue.safety", String(value), source);
  const hasLine = given?.has("line") ?? false;
  if (cyclic && fatigue.kind === "endured" && !hasLine) limits.takeDefault("fatigue.line", "goodman", "Shigley section 10-9");
  if (given && hasLine && fatigue.kind === "diagram") {
    given.problem("line", "lineOfDiagram", "a line, where the material's own diagram judges", "leave it out");
  }
  return {
    safety: (given?.has("safety") ? exactQuantity(given, "safety") : undefined) ?? value,
    line: (hasLine ? given?.word<FatigueLine>("line") : undefined) ?? "goodman",
  };
}

function readLoadTolerance(limits: Section, { tolerance, title }: Practice): Limits["loadTolerance"] {
  const section = limits.section("loadTolerance");
  if (!(section instanceof Section) || !limits.has("loadTolerance") || !section.require("grade")) return "off";
  const grade = gradeOf(section, tolerance, title);
  return grade === undefined ? "off" : { grade };
}

/** The one key given of several that exclude each other; notes none or more than one. */
function oneOf<Name extends string>(section: Section, names: readonly Name[]): Name | undefined {
  const given = names.filter((name) => section.has(name));
  if (given.length === 1) return given[0];
  const got = given.length === 0 ? "gives no threshold" : `gives ${given.join(" and ")}`;
  return section.problem("", "oneOf", got, `give exactly one of ${names.join(", ")}`);
}

function isLifted(limits: Section, name: (typeof liftable)[number]): boolean {
  if (!limits.has(name)) return false;
  if (limits.holdsText(name) && limits.scalar(name) === "off") return true;
  limits.problem(name, "onlyOff", "takes only off here", wherever(name));
  return false;
}

function wherever(name: string): string {
  if (name === "temperature") return "the service temperature stands in service, the highest in the material's file";
  if (name === "hotForce") return "the forces stand in load, the service temperature in service";
  if (name === "wire") return "what a series is sold in stands in its file";
  return `write the window in envelope.${name}`;
}

/** The tolerance grade at the key `grade`; undefined, and noted, where the practice has no such grade. */
export function gradeOf(section: Section, { grades }: TolerancePractice, title: string): ToleranceGrade | undefined {
  const typed = section.word<string>("grade");
  const grade = grades.find((known) => String(known) === typed);
  if (grade !== undefined || typed === undefined) return grade;
  const known = grades.length === 1 ? grades[0] : `${grades.slice(0, -1).join(", ")} or ${grades.at(-1)}`;
  return section.problem("grade", "gradeOfPractice", `${title} has no grade ${typed}`, `write ${known}`);
}
