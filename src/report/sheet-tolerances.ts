import type { Brief, Design, PracticeName, ToleranceGrade } from "../model.ts";

const NAMES: Readonly<Record<PracticeName, string>> = {
  handbook: "tables of the inch trade, for force a rule from memory",
  en13906: "EN 15800, for force and length from memory",
};

/**
 * By which grade of which tables the sheet's tolerances stand, and who chose it.
 *
 * @returns such as `Tolerances: grade 2 (EN 15800, …), the practice's usual; the brief asks none.`
 */
export function toleranceSentence({ practice, limits }: Brief, { tolerance }: Design): string {
  const chosen = limits.loadTolerance === "off" ? "the practice's usual; the brief asks none" : "as the brief asks";
  return `Tolerances: ${gradeWords(tolerance.grade)} (${NAMES[practice]}), ${chosen}.`;
}

/** A grade as a heading names it. */
export function gradeWords(grade: ToleranceGrade): string {
  return grade === "commercial" ? "commercial" : `grade ${grade}`;
}
