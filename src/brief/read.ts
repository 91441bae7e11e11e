import { omitUndefined } from "../document/omit-undefined.ts";
import { parseBrief } from "../document/yaml.ts";
import type { Brief, CheckBrief, Load, Lookup, PracticeName, Sweep } from "../model.ts";
import { practices } from "../practice/practices.ts";
import { ProblemError } from "../problem.ts";
import { checkAgreement } from "./cross-checks.ts";
import { sweepOf } from "./design-to-brief.ts";
import { exactQuantity, writtenUnits } from "./quantities.ts";
import { type Reading, Section } from "./section.ts";
import { readDesign } from "./sections/design.ts";
import { checkEnvelope, readEnvelope } from "./sections/envelope.ts";
import { readLimits } from "./sections/limits.ts";
import { readLoad } from "./sections/load.ts";
import { checkNested, readNested } from "./sections/nested.ts";
import { readOrder } from "./sections/order.ts";
import { readScatter, readService } from "./sections/service.ts";
import { type Ranking, type RankWord, rankingOf, readSweep } from "./sections/sweep.ts";

/**
 * The text of a brief, YAML or JSON -> the brief in SI with its catalog entries, what its author asked and every default taken.
 *
 * @param text    as the file holds it
 * @param file    as the person named it; heads every problem, and its base name is the title where none is given
 * @param lookup  finds wires, materials and end styles by name
 * @throws ProblemError with every problem found, each with its line; a brief that throws gives nothing
 */
export function readBrief(text: string, file: string, lookup: Lookup): Brief {
  return readWhole(text, file, (brief, load) => {
    const section = sweepSection(brief);
    const sweep = section && readSweep(section, lookup, load);
    if (brief.has("nested")) checkNested(brief, load, section, sweep);
    return { section, sweep };
  });
}

/**
 * The text of a brief with a `design` -> the same, with that one spring in place of what its `sweep` may name.
 *
 * @param text    as the file holds it
 * @param file    as the person named it
 * @param lookup  finds wires, materials and end styles by name
 * @throws ProblemError as `readBrief`
 */
export function readCheckBrief(text: string, file: string, lookup: Lookup): CheckBrief {
  let design: CheckBrief["design"] | undefined;
  const brief = readWhole(text, file, (brief) => {
    const section = brief.requiredSection("design");
    if (brief.has("nested"))
      brief.problem("nested", "nestedDesign", "beside a design", "check judges one spring; leave nested out");
    design = section && readDesign(section, lookup);
    return { section, sweep: design && sweepOf(design) };
  });
  // One spring has no rank, so nothing is taken for it.
  return { ...brief, defaults: brief.defaults.filter(({ key }) => key !== "rank"), design: design as CheckBrief["design"] };
}

/** What to try, and the section that says so. */
interface Tried {
  readonly section: Section | undefined;
  readonly sweep: Sweep | undefined;
}

function readWhole(text: string, file: string, readTried: (brief: Section, load: Load | undefined) => Tried): Brief {
  const source = parseBrief(text, file);
  const reading: Reading = { file, source, problems: [], asked: [], defaults: [] };
  const brief = new Section(reading, "", 1, source.top);

  const title = brief.scalar("title") ?? baseName(file);
  const practice = brief.require("practice") ? brief.word<PracticeName>("practice") : undefined;
  const loadSection = brief.requiredSection("load");
  const load = loadSection && readLoad(loadSection);
  const envelopeSection = brief.subsection("envelope");
  const nested = readNested(brief);
  const envelope = readEnvelope(envelopeSection, nested !== undefined);
  checkEnvelope(envelopeSection, envelope, load);
  const { section, sweep } = readTried(brief, load);
  const sections = {
    sweep: section,
    service: brief.subsection("service"),
    limits: brief.subsection("limits"),
  };
  const used = readService(sections.service);
  // Without a practice the brief is refused; either one serves to find what else is wrong.
  const judging = practices[practice ?? "handbook"];
  const limits = readLimits(sections.limits, judging, used);
  const around = { practice: judging, limits, sweep, nested: nested !== undefined };
  const service = omitUndefined<Brief["service"]>({ ...used, scatter: readScatter(sections.service, around) });
  const cost = readCost(brief.subsection("cost"));
  const ranking = readRank(brief, sections.service.has("scatter"));
  const order = brief.has("order") ? readOrder(brief.subsection("order")) : undefined;
  checkAgreement(sections, { practice, sweep, service, limits });

  if (reading.problems.length > 0 || !practice || !load || !sweep) throw new ProblemError(reading.problems);
  const { asked, defaults } = reading;
  const units = writtenUnits(asked);
  const answered = { title, practice, load, envelope, sweep, service, limits, cost, ...ranking, nested, order };
  return omitUndefined<Brief>({ ...answered, units, asked, defaults });
}

function sweepSection(brief: Section): Section | undefined {
  if (brief.has("sweep") || !brief.has("design")) return brief.requiredSection("sweep");
  const want = "judge the one design given with `coilsieve check`, or write a sweep to rank others";
  return brief.problem("sweep", "missing", "is missing", want);
}

function readCost(cost: Section): Brief["cost"] {
  const weight = (name: keyof Brief["cost"]) => exactQuantity(cost, name);
  return omitUndefined<Brief["cost"]>({
    grind: weight("grind"),
    set: weight("set"),
    peen: weight("peen"),
    relieve: weight("relieve"),
  });
}

function readRank(brief: Section, isDrawn: boolean): Ranking {
  if (!brief.has("rank")) brief.takeDefault("rank", "mass", "default of coilsieve");
  const ranking = rankingOf(brief.words<RankWord>("rank") ?? ["mass"], isDrawn);
  if ("rank" in ranking) return ranking;
  brief.problem("rank", ranking.code, ranking.got, ranking.want);
  return { rank: ["mass"] };
}

function baseName(file: string): string {
  return file.replace(/^.*[/\\]/, "").replace(/\.(ya?ml|json)$/i, "");
}
