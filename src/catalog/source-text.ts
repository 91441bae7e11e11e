import { ProblemError } from "../problem.ts";

/** A catalog file's text with the name a person knows it by. */
export interface CatalogText {
  readonly file: string;
  readonly text: string;
}

/** Largest table of wires that is read, characters; the largest shipped one has a few thousand. */
export const largestCatalog = 2_000_000;

/** Largest YAML text that is read, characters: a few pages are plenty, and some texts take time by the square of their length. */
export const largestYaml = 250_000;

/**
 * Text as an editor or a spreadsheet saved it -> the same with plain line ends and no byte order mark. Throws a `ProblemError`
 * (`tooLarge`) where it is too long.
 *
 * @param catalog  the file's text and name
 * @param longest  how long it may be, characters
 */
export function plainText({ file, text }: CatalogText, longest: number): string {
  if (text.length > longest) {
    const want = `a catalog has at most ${longest}`;
    throw new ProblemError([{ code: "tooLarge", file, key: "file", got: `${text.length} characters came`, want }]);
  }
  return text.replace(/^\uFEFF/, "").replace(/\r\n?/g, "\n");
}

/**
 * The lines at the head of a catalog that say where it comes from.
 *
 * @param plain  text with plain line ends
 * @returns the leading lines that begin with #, without it, in order
 */
export function headLines(plain: string): string[] {
  const lines = plain.split("\n");
  const end = lines.findIndex((line) => !line.startsWith("#"));
  return lines.slice(0, end < 0 ? lines.length : end).map((line) => line.slice(1).trim());
}
