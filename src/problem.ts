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
  return printable(text).replace(/[\t\n\r]|[\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/g, visible);
}

/** Text with those characters made visible that no page, picture or sheet may hold; line breaks and tabs stay. */
export function printable(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  return text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\ufffe\uffff]|\p{Surrogate}/gu, visible);
}

/** A value as JSON, in which no character acts on a terminal; read, it is the same value. */
export function jsonText(value: unknown, indent?: number): string {
  // JSON itself escapes line breaks and lone surrogates, and writes null for what is not finite.
  return JSON.stringify(value, null, indent).replace(
    /[\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufffe\uffff]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
}

function visible(character: string): string {
  const known: Record<string, string> = { "\n": "\\n", "\r": "\\r", "\t": "\\t" };
  const digits = character.charCodeAt(0).toString(16);
  return known[character] ?? (digits.length > 2 ? `\\u${digits.padStart(4, "0")}` : `\\x${digits.padStart(2, "0")}`);
}

/** Longest text of a person that a message repeats, characters. */
const LONGEST_QUOTED = 60;

/** What a person wrote, as a message quotes it: control characters shown, the middle left out of what is long. */
export function quoted(text: string, longest = LONGEST_QUOTED): string {
  const shown = [...oneLine(text)];
  if (shown.length <= longest) return shown.join("");
  const half = (longest - 1) / 2;
  return `${shown.slice(0, Math.ceil(half)).join("")}…${shown.slice(-Math.floor(half)).join("")}`;
}

/** Problems of one file that are printed; of the others their number. */
const MOST_PRINTED = 50;

/** Thrown at the door with every problem found, each once, sorted by line; the command line prints them and exits with 2. */
export class ProblemError extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    const sorted = [...problems].sort((a, b) => (a.file ?? "").localeCompare(b.file ?? "") || (a.line ?? 0) - (b.line ?? 0));
    const once = eachOnce(sorted);
    super(printedLines(once).join("\n"));
    this.name = "ProblemError";
    this.problems = once;
  }
}

/** Sorted problems without those that say the same of one place. */
function eachOnce(sorted: readonly Problem[]): Problem[] {
  let said = new Set<string>();
  return sorted.filter(({ file, line, key, got, want }, i) => {
    const before = sorted[i - 1];
    if (before?.line !== line || before?.file !== file) said = new Set();
    const sentence = `${key}: ${got}; ${want}`;
    if (said.has(sentence)) return false;
    said.add(sentence);
    return true;
  });
}

/** The first problems of each file, and how many more it has; problems of one file stand together. */
function printedLines(sorted: readonly Problem[]): string[] {
  const files = [...new Set(sorted.map(({ file }) => file))];
  return files.flatMap((file) => {
    const problems = sorted.filter((problem) => problem.file === file);
    const lines = problems.slice(0, MOST_PRINTED).map(problemLine);
    const more = problems.length - lines.length;
    return more === 0
      ? lines
      : [...lines, oneLine(`${file ?? "options"}: ${more.toLocaleString("en")} more problems like these`)];
  });
}

/** How far a name may be from what was typed, letters changed, added or left out. */
const MOST_EDITS = 3;

/** The names within three edits of what was typed, nearest first. */
export function nearestNames(typed: string, names: readonly string[]): string[] {
  return names
    .filter((name) => Math.abs(name.length - typed.length) <= MOST_EDITS)
    .map((name) => ({ name, distance: editDistance(typed.toLowerCase(), name.toLowerCase()) }))
    .filter(({ distance }) => distance <= MOST_EDITS)
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
