/**
 * Text broken at spaces into lines of a terminal.
 *
 * @param text    one line of text
 * @param width   characters in a line; a longer word is cut
 * @param indent  spaces before every line but the first
 * @returns at least one line, none wider than the width
 */
export function wrap(text: string, width: number, indent: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/ +/).flatMap((word) => cut(word, width - indent))) {
    if (line !== "" && line.length + 1 + word.length > width) {
      lines.push(line);
      line = " ".repeat(indent) + word;
    } else {
      line = line === "" ? word : `${line} ${word}`;
    }
  }
  return [...lines, line];
}

function cut(word: string, width: number): string[] {
  const pieces = Math.max(1, Math.ceil(word.length / width));
  return Array.from({ length: pieces }, (_, i) => word.slice(i * width, (i + 1) * width));
}

/** A sentence as the rest of another one. */
export function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** What becomes a sentence by its first letter. */
export function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
