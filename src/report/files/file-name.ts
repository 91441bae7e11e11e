/** The longest part of a title that a file is named after. */
const LONGEST = 60;

/**
 * A name for a file about a brief, safe on every file system: letters and digits of any script, everything else a hyphen.
 *
 * @param title   of the brief
 * @param what    what the file holds, such as `chart`; with it no name is one that a system keeps for itself
 * @param ending  such as `svg`
 * @returns such as `latch-plunger-spring-chart.svg`; does not throw
 */
export function fileName(title: string, what: string, ending: string): string {
  const plain = (text: string) =>
    text
      .normalize("NFC")
      .toLowerCase()
      .match(/[\p{L}\p{M}\p{N}]+/gu) ?? [];
  const words = [...plain(title).join("-")].slice(0, LONGEST).join("").replace(/-+$/, "");
  return `${[words, ...plain(what)].filter((word) => word !== "").join("-")}.${ending}`;
}
