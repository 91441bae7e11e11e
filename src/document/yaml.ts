import { type Document, isMap, LineCounter, type Node, parseDocument, visit, type YAMLError, type YAMLMap } from "yaml";
import { type Problem, ProblemError, quoted } from "../problem.ts";

/** Largest brief that is read, characters: some texts take time by the square of their length. */
const largestBrief = 250_000;

/** The nodes of a brief, with what is needed to say where they stand. */
export interface BriefDocument {
  readonly top: YAMLMap;
  /** 1-based line of a node; 1 where it has none. */
  readonly lineOf: (node: Node | null | undefined) => number;
}

/**
 * YAML or JSON text -> its top map. JSON is read as the part of YAML that it is; line ends may be CRLF.
 *
 * Throws ProblemError with the first fault of syntax and its line (`yaml`), every alias (`alias`), or one of `tooLarge`, `empty`, `wrongKind`.
 */
export function parseBrief(text: string, file: string): BriefDocument {
  const fail = (code: string, got: string, want: string): never => {
    throw new ProblemError([{ code, file, key: "brief", got, want }]);
  };
  if (text.length > largestBrief) fail("tooLarge", `is over ${largestBrief} characters`, "a brief is a page of text");

  const lines = new LineCounter();
  let document: ReturnType<typeof parseDocument>;
  try {
    // "failsafe" keeps scalars as typed, so that off, 1e6 or true mean what the key says, not what YAML guesses. Keys are
    // compared where a section is opened; the library would compare each with each.
    document = parseDocument(text, { schema: "failsafe", lineCounter: lines, prettyErrors: false, uniqueKeys: false });
  } catch {
    return fail("yaml", "is nested too deep to read", "a brief has sections and lists only");
  }
  // Faults after the first are mostly its consequences.
  const [fault] = [...document.errors, ...document.warnings];
  if (fault !== undefined) throw new ProblemError([{ ...syntaxProblem(fault), file, line: lines.linePos(fault.pos[0]).line }]);

  const problems = aliasProblems(document, lines, file, "brief");
  if (problems.length > 0) throw new ProblemError(problems);

  const top = document.contents as Node | null;
  if (top === null) fail("empty", "is empty", "`coilsieve start` writes one to begin from");
  if (!isMap(top)) return fail("wrongKind", "is not a set of keys", "begin with `practice:`, `load:` and `sweep:`");
  return { top, lineOf: (node) => (node?.range ? lines.linePos(node.range[0]).line : 1) };
}

function syntaxProblem({ code, message }: YAMLError): Problem {
  const told = (got: string, want: string): Problem => ({ code: "yaml", key: "brief", got, want });
  switch (code) {
    case "TAB_AS_INDENT":
      return told("a tab indents this line", "indent with spaces");
    case "MULTIPLE_DOCS":
      return told("a second document begins here", "a file holds one brief; write the second to a file of its own");
    case "TAG_RESOLVE_FAILED":
      return told("a tag stands here", "a brief takes none; write the value plainly");
    case "RESOURCE_EXHAUSTION":
      return told("is nested too deep to read", "a brief has sections and lists only");
    default:
      return told(
        `is not YAML here (${quoted(message, 120)})`,
        "write `key: value`, indent sections by spaces, close quotes and brackets",
      );
  }
}

/** Lines of one alias that are told one by one. */
const MOST_LINES = 7;

/**
 * What is wrong with the aliases of a YAML text: they are refused, for a few of them can stand for a text without end.
 *
 * @param document  parsed, not expanded
 * @param lines     of the same text
 * @param file      as the person named it
 * @param key       what the whole text is called in messages
 * @returns one problem for each name, `alias`, with every line that it stands in
 */
export function aliasProblems(document: Document, lines: LineCounter, file: string, key: string): Problem[] {
  const linesOf = new Map<string, number[]>();
  visit(document, {
    Alias: (_, { source, range }) => {
      const { line } = lines.linePos(range?.[0] ?? 0);
      const before = linesOf.get(source);
      if (before) before.push(line);
      else linesOf.set(source, [line]);
    },
  });
  return [...linesOf].map(([name, places]) => {
    const got = `*${name} stands for another value${placeWords(places)}`;
    return { code: "alias", file, line: places[0] as number, key, got, want: "write it out" };
  });
}

/** Where it stands beside the line that the message begins with; nothing where it stands there once. */
function placeWords(places: readonly number[]): string {
  const lines = [...new Set(places)];
  const often = places.length === 2 ? "twice" : `${places.length} times`;
  if (places.length === 1) return "";
  if (lines.length === 1) return `, ${often} in this line`;
  const more = lines.length > MOST_LINES + 1 ? `${lines.length - MOST_LINES} more` : String(lines.at(-1));
  const told = lines.slice(0, Math.min(MOST_LINES, lines.length - 1)).join(", ");
  return `, ${places.length === lines.length ? "" : `${often} `}in lines ${told} and ${more}`;
}
