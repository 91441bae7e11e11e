import type { ToleranceGrade } from "../model.ts";
import type { TolerancePractice } from "../practice/practice.ts";
import type { Section } from "./section.ts";

/** The tolerance grade at the key `grade`; undefined, and noted, where the practice has no such grade. */
export function gradeOf(section: Section, { grades }: TolerancePractice, title: string): ToleranceGrade | undefined {
  const typed = section.word<string>("grade");
  const grade = grades.find((known) => String(known) === typed);
  if (grade !== undefined || typed === undefined) return grade;
  const known = grades.length === 1 ? grades[0] : `${grades.slice(0, -1).join(", ")} or ${grades.at(-1)}`;
  return section.problem("grade", "gradeOfPractice", `${title} has no grade ${typed}`, `write ${known}`);
}
