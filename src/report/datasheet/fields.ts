import { escapeMarkup } from "../html/markup.ts";

/** One field of the data sheet. */
export interface Field {
  readonly label: string;
  /** What stands there; absent or empty: a line to fill in by hand. */
  readonly text?: string | undefined;
  /** Boxes to tick, before the text; those that are known are ticked. */
  readonly choices?: readonly Choice[];
  /** In small type after the value: where it comes from, or what holds while it is blank. */
  readonly note?: string | undefined;
}

/** A box to tick, with its word. */
export interface Choice {
  readonly word: string;
  readonly ticked: boolean;
}

/** The choices of a field, the known ones ticked. */
export function choices<Word extends string>(words: readonly Word[], known: readonly Word[] = []): Choice[] {
  return words.map((word) => ({ word, ticked: known.includes(word) }));
}

/** A part of the sheet: its heading and its body, which is markup. */
export function sheetPart(name: string, heading: string, body: string): string {
  return `<section class="sheet-${name}"><h2>${escapeMarkup(heading)}</h2>${body}</section>`;
}

/** Fields as a list of label and value. Every text is text, never markup. */
export function fieldList(fields: readonly Field[]): string {
  return `<dl>${fields.map((field) => `<dt>${escapeMarkup(field.label)}</dt><dd>${shownValue(field)}</dd>`).join("")}</dl>`;
}

/** A line to be filled in by hand, heard by those who do not see it. */
export const blankLine = '<span class="blank" role="img" aria-label="to be filled in"></span>';

function shownValue({ text, choices = [], note }: Field): string {
  const boxes = choices.map(
    ({ word, ticked }) => `<span class="choice"><span class="tick">${ticked ? "×" : ""}</span>${escapeMarkup(word)}</span>`,
  );
  const value = text ? `<span>${escapeMarkup(text)}</span>` : choices.length > 0 ? "" : blankLine;
  const small = note ? `<small>${escapeMarkup(note)}</small>` : "";
  return [...boxes, value, small].filter((part) => part !== "").join(" ");
}
