import type { Limits, Material, PracticeName, Service, Sweep } from "../model.ts";
import { practices } from "../practice/practice.ts";
import type { Section } from "./section.ts";

/** The sections whose contents must agree with each other. */
interface Sections {
  readonly sweep: Section | undefined;
  readonly service: Section;
  readonly limits: Section;
}

/** What was read from them; undefined where it could not be. */
interface Contents {
  readonly practice: PracticeName | undefined;
  readonly sweep: Sweep | undefined;
  readonly service: Service;
  readonly limits: Limits;
}

/** Notes what one section of a brief asks and another denies. */
export function checkAgreement(sections: Sections, { practice, sweep, service, limits }: Contents): void {
  if (sections.sweep && sweep && practice) checkEnds(sections.sweep, sweep, practice);
  if (sweep && service.strength === "fit") checkFits(sections.service, sweep.materials);
  if (service.cycles !== undefined && !limits.lifted.includes("fatigue") && !sections.limits.has("fatigue")) {
    const want = "write limits: { fatigue: off } to accept that, or leave cycles out";
    sections.service.problem("cycles", "notJudged", "fatigue is not judged in this version", want);
  }
  if (sweep && sweep.turns !== "any" && limits.turns === "off") {
    sections.limits.problem("turns", "contradiction", "off, where turns are counted", "a count needs an end: { max: … }");
  }
}

function checkEnds(section: Section, { ends }: Sweep, practice: PracticeName): void {
  const { title, ends: known } = practices[practice];
  const unknown = ends.map(({ name }) => name).filter((name) => known !== null && !known.includes(name));
  if (known === null || unknown.length === 0) return;
  const want = `it knows ${known.join(" and ")}; leave the others out, or follow another practice`;
  section.problem("ends", "endsOfPractice", `${title} has no figures for ${unknown.join(", ")}`, want);
}

function checkFits(section: Section, materials: readonly Material[]): void {
  const without = materials.filter(({ strength }) => strength.fit === undefined && strength.constant === undefined);
  if (without.length === 0) return;
  const names = without.map(({ name }) => name).join(", ");
  section.problem(
    "strength",
    "noFit",
    `fit, but ${names} has no fit in print`,
    "write strength: minimum, or leave the material out",
  );
}
