import { jsonText } from "../problem.ts";

/** What stands at a key of a brief: text as it is to be read back, a list, or a set of keys; what is undefined is left out. */
export type Written = string | readonly Written[] | { readonly [key: string]: Written | undefined };

/** Text that needs no quotes wherever it stands. */
const plain = /^[\p{L}\p{N}.+/][\p{L}\p{N} ./+±%()°²³·_-]*$/u;
/** Longest line on which a set of keys is written in braces. */
const longestLine = 110;

/**
 * A set of keys -> YAML that a brief's reader reads back to the same text, key by key in their order.
 *
 * @param top  sections by name; a section of texts stands on one line where it is short
 * @returns ended by a line break; does not throw
 */
export function yamlText(top: { readonly [key: string]: Written | undefined }): string {
  return `${entries(top)
    .flatMap(([key, value]) => lines(key, value, ""))
    .join("\n")}\n`;
}

function lines(key: string, value: Written, indent: string): string[] {
  const short = `${indent}${key}: ${inBraces(value)}`;
  const isDeep = typeof value === "object" && Object.values(value).some(isSet);
  if (typeof value === "string" || (!isDeep && short.length <= longestLine)) return [short];
  if (isList(value)) return [`${indent}${key}:`, ...value.map((item) => `${indent}  - ${inBraces(item)}`)];
  return [`${indent}${key}:`, ...entries(value).flatMap(([name, inner]) => lines(name, inner, `${indent}  `))];
}

function inBraces(value: Written): string {
  if (typeof value === "string") return plain.test(value) && value === value.trim() ? value : jsonText(value);
  if (isList(value)) return `[${value.map(inBraces).join(", ")}]`;
  return `{ ${entries(value)
    .map(([key, inner]) => `${key}: ${inBraces(inner)}`)
    .join(", ")} }`;
}

function entries(set: { readonly [key: string]: Written | undefined }): [string, Written][] {
  return Object.entries(set).filter((entry): entry is [string, Written] => entry[1] !== undefined);
}

function isList(value: Written): value is readonly Written[] {
  return Array.isArray(value);
}

function isSet(value: Written | undefined): boolean {
  return typeof value === "object" && (!isList(value) || value.some(isSet));
}
