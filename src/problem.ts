/**
 * What a person did wrong, in one form for every room: where it stands, what came, what would be right.
 *
 * `code` is stable and is what tests match; the sentence is made here and nowhere else.
 */
export interface Problem {
  readonly code: string;
  /** The file as the person named it; absent for a command-line option. */
  readonly file?: string;
  /** 1-based line in that file, where it is known. */
  readonly line?: number;
  /** The key's path, such as `load.force`, or the option, such as `--top`. */
  readonly key: string;
  /** What came, in the person's own words. */
  readonly got: string;
  /** What would be right. */
  readonly want: string;
}

/** `file:line key: what came; what would be right`, on one line whatever the text contains. */
export function problemLine(problem: Problem): string {
  const place =
    problem.file === undefined ? "" : problem.line === undefined ? `${problem.file} ` : `${problem.file}:${problem.line} `;
  return oneLine(`${place}${problem.key}: ${problem.got}; ${problem.want}`);
}

/**
 * Text with line breaks and control characters made visible, those that turn the direction of writing among them, so that it can
 * neither act on a terminal nor show in another order than it is in.
 */
export function oneLine(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  return text.replace(/[\u0000-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/g, (character) => {
    const known: Record<string, string> = { "\n": "\\n", "\r": "\\r", "\t": "\\t" };
    const digits = character.charCodeAt(0).toString(16);
    return known[character] ?? (digits.length > 2 ? `\\u${digits.padStart(4, "0")}` : `\\x${digits.padStart(2, "0")}`);
  });
}

/** Thrown at the door with every problem found, sorted by line; the command line prints them and exits with 2. */
export class ProblemError extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    const sorted = [...problems].sort((a, b) => (a.file ?? "").localeCompare(b.file ?? "") || (a.line ?? 0) - (b.line ?? 0));
    super(sorted.map(problemLine).join("\n"));
    this.name = "ProblemError";
    this.problems = sorted;
  }
}

/** The names within three edits of what was typed, nearest first. */
export function nearestNames(typed: string, names: readonly string[]): string[] {
  return names
    .map((name) => ({ name, distance: editDistance(typed.toLowerCase(), name.toLowerCase()) }))
    .filter(({ distance }) => distance <= 3)
    .sort((a, b) => a.distance - b.distance)
    .map(({ name }) => name);
}

function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    for (let j = 1; j <= b.length; j++) {
      const substitution = (previous[j - 1] as number) + (a[i - 1] === b[j - 1] ? 0 : 1);
      current.push(Math.min((previous[j] as number) + 1, (current[j - 1] as number) + 1, substitution));
    }
    previous = current;
  }
  return previous[b.length] as number;
}
