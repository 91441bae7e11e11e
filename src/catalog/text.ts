import { ProblemError } from "../problem.ts";

/** A catalog file's text with the name a person knows it by. */
export interface CatalogText {
  readonly file: string;
  readonly text: string;
}

/** Largest catalog file that is read, characters; the largest shipped one has a few thousand. */
export const largestCatalog = 2_000_000;

/**
 * Text as an editor or a spreadsheet saved it -> the same with plain line ends and no byte order mark. Throws a `ProblemError`
 * (`tooLarge`) past two million characters.
 *
 * @param catalog  the file's text and name
 */
export function plainText({ file, text }: CatalogText): string {
  if (text.length > largestCatalog) {
    const want = `a catalog has at most ${largestCatalog}`;
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
