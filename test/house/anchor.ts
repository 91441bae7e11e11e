/** The anchor that a heading of a paper gets: lower case, spaces as hyphens, other marks dropped. */
export function anchorOf(heading: string): string {
  const words = heading.toLowerCase().replace(/[^\p{L}\p{N}\s_-]/gu, "");
  return words.trim().replaceAll(/\s/g, "-");
}
