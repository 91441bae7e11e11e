import type { FatigueLine, Limits, Material, PracticeName, Service, Sweep, WireSeries } from "../model.ts";
import type { Practice } from "../practice/choices.ts";
import { practices } from "../practice/practices.ts";
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
  if (sweep && practice && service.cycles !== undefined && limits.fatigue !== "off") {
    checkFatigueData(sections.service, sweep.materials, practices[practice], service, limits.fatigue.line);
  }
  if (sections.sweep && sweep) checkSize(sections.sweep, sweep, limits);
  if (sections.sweep && sweep) checkPrices(sections.sweep, sweep);
  if (sweep && sweep.turns !== "any" && limits.turns === "off") {
    sections.limits.problem("turns", "contradiction", "off, where turns are counted", "a count needs an end: { max: … }");
  }
}

/** Costs compare where every wire has a price, in one currency, or none has. */
function checkPrices(section: Section, { wires }: Sweep): void {
  const named = (found: readonly WireSeries[]) => found.map(({ name, path }) => path ?? name).join(", ");
  const isPriced = (series: WireSeries) => series.wires.some(({ price }) => price !== undefined);
  const priced = wires.filter(isPriced);
  if (priced.length > 0 && priced.length < wires.length) {
    const got = `${named(priced)} has prices and ${named(wires.filter((series) => !isPriced(series)))} has none, so costs do not compare`;
    section.problem("wires", "somePrices", got, "give every series prices, or leave the column price out");
  }
  const [first, ...others] = priced;
  const other = others.find(({ currency }) => currency !== first?.currency);
  if (first === undefined || other === undefined) return;
  const money = ({ currency = "no currency that is named" }: WireSeries) => currency;
  const got = `${named([first])} is in ${money(first)} and ${named([other])} in ${money(other)}, so costs do not compare`;
  section.problem("wires", "twoCurrencies", got, "give all prices in one currency, named by a line # prices in: …");
}

/** Springs of different material, wire, ends or turns that one brief may walk; every shipped one is a quarter of it. */
const mostFamilies = 10_000_000;

function checkSize(section: Section, { materials, wires, ends, turns }: Sweep, limits: Limits): void {
  const sizes = wires.reduce((sum, series) => sum + series.wires.length, 0);
  const { min = 0, max = 0 } = limits.turns === "off" ? {} : limits.turns;
  const counts = turns === "any" ? 1 : Math.max(0, Math.floor((max - min) * { quarter: 4, half: 2, whole: 1 }[turns])) + 1;
  const families = materials.length * sizes * ends.length * counts;
  if (families <= mostFamilies) return;
  const shown = (count: number) => count.toLocaleString("en");
  const got = `${materials.length} materials x ${shown(sizes)} wires x ${ends.length} ends x ${shown(counts)} turns is too much to walk`;
  section.problem("", "tooMany", got, `name fewer, or narrow limits.turns, to ${shown(mostFamilies)} at most`);
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

/** Cyclic duty needs data: strengths that hold for the class of material, or a diagram in the material's own file. */
function checkFatigueData(
  section: Section,
  materials: readonly Material[],
  { fatigue, title }: Practice,
  { surface, cycles = 0 }: Service,
  line: FatigueLine,
): void {
  const accept = "write limits: { fatigue: off } to accept that fatigue is not judged";
  const name = (found: readonly Material[]) => found.map((material) => material.name).join(", ");
  if (fatigue.kind === "endured") {
    const classes: readonly string[] = line === "life" ? Object.keys(fatigue.life.value.shares) : fatigue.classes;
    const without = materials.filter((material) => !material.class || !classes.includes(material.class));
    if (without.length === 0) return;
    const got = `${title} has no fatigue strengths for ${name(without)}; they are for ${classes.join(", ")} wire`;
    section.problem("cycles", "noFatigueData", got, `leave it out, or ${accept}`);
    return;
  }
  const without = materials.filter((material) => material.fatigue?.[surface] === undefined);
  if (without.length > 0) {
    const got = `no published fatigue points of ${surface} wire are at hand for ${name(without)}`;
    section.problem("cycles", "noFatigueData", got, `give a material file that has them, or ${accept}`);
  }
  const short = materials.filter((material) => material.fatigue?.[surface] && cycles > material.fatigue.cycles);
  if (short.length > 0) {
    const got = `${cycles} is beyond the life of the fatigue points of ${name(short)} (${short[0]?.fatigue?.cycles})`;
    section.problem("cycles", "beyondFatigueData", got, `ask for no more, or ${accept}`);
  }
}
