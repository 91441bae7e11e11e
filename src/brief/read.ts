import type { Brief, Lookup, MeritName, PracticeName } from "../model.ts";
import { practices } from "../practice/practice.ts";
import { ProblemError } from "../problem.ts";
import { checkAgreement } from "./agreement.ts";
import { parseBrief } from "./document.ts";
import { checkEnvelope, readEnvelope } from "./envelope.ts";
import { readLimits } from "./limits.ts";
import { readLoad } from "./load.ts";
import type { Reading } from "./reading.ts";
import { Section } from "./section.ts";
import { readService, reserved } from "./service.ts";
import { readSweep } from "./sweep.ts";
import { writtenUnits } from "./written-units.ts";

/**
 * The text of a brief, YAML or JSON -> the brief in SI with its catalog entries, what its author asked and every default taken.
 *
 * @param text    as the file holds it
 * @param file    as the person named it; heads every problem, and its base name is the title where none is given
 * @param lookup  finds wires, materials and end styles by name
 * @throws ProblemError with every problem found, each with its line; a brief that throws gives nothing
 */
export function readBrief(text: string, file: string, lookup: Lookup): Brief {
  const source = parseBrief(text, file);
  const reading: Reading = { file, source, problems: [], asked: [], defaults: [] };
  const brief = new Section(reading, "", 1, source.top);
  for (const name of ["design", "nested", "order"]) if (brief.has(name)) reserved(brief, name);

  const title = brief.scalar("title") ?? baseName(file);
  const practice = brief.require("practice") ? brief.word<PracticeName>("practice") : undefined;
  const loadSection = brief.requiredSection("load");
  const load = loadSection && readLoad(loadSection);
  const envelopeSection = brief.subsection("envelope");
  const envelope = readEnvelope(envelopeSection);
  checkEnvelope(envelopeSection, envelope, load);
  const sections = {
    sweep: brief.requiredSection("sweep"),
    service: brief.subsection("service"),
    limits: brief.subsection("limits"),
  };
  const sweep = sections.sweep && readSweep(sections.sweep, lookup, load);
  const service = readService(sections.service);
  // Without a practice the brief is refused; either one serves to find what else is wrong.
  const limits = readLimits(sections.limits, practices[practice ?? "handbook"], service);
  const rank = readRank(brief);
  checkAgreement(sections, { practice, sweep, service, limits });

  if (reading.problems.length > 0 || !practice || !load || !sweep) throw new ProblemError(reading.problems);
  const { asked, defaults } = reading;
  return { title, practice, load, envelope, sweep, service, limits, rank, units: writtenUnits(asked), asked, defaults };
}

function readRank(brief: Section): readonly MeritName[] {
  if (!brief.has("rank")) brief.takeDefault("rank", "mass", "default of coilsieve");
  return brief.words<MeritName>("rank") ?? ["mass"];
}

function baseName(file: string): string {
  return file.replace(/^.*[/\\]/, "").replace(/\.(ya?ml|json)$/i, "");
}
