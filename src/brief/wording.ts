import { isMap, isScalar, isSeq, type Node } from "yaml";
import { nearestNames, quoted } from "../problem.ts";
import { keyAt, keysUnder } from "./keys.ts";

/** The nearest known name, else all of them. */
export function suggestion(name: string, known: readonly string[]): string {
  const [nearest] = nearestNames(name, known);
  return nearest === undefined ? `known here: ${known.join(", ")}` : `did you mean ${nearest}?`;
}

/** The text of a scalar as its author wrote it; undefined for anything else. */
export function textOf(node: Node): string | undefined {
  return isScalar(node) ? String(node.value).trim() : undefined;
}

/** What stands where something else is due. */
export function kindOf(node: Node): string {
  if (isMap(node)) return "is a set of keys";
  if (isSeq(node)) return "is a list";
  const text = textOf(node);
  return text === "" ? "is empty" : `is "${quoted(text ?? "")}"`;
}

/** What would be right at a key, from the table of keys. */
export function wantOf(path: string): string {
  const { kind, words, example } = keyAt(path);
  const such = example === undefined ? "" : `, such as ${example.replace(/^- (.*)\n- (.*)$/, "[$1, $2]")}`;
  const orWord = words === undefined ? "" : `${words.join(" or ")}, or `;
  switch (kind) {
    case "section":
      return `write ${orWord}a set of keys${such || `: ${keysUnder(path).join(", ")}`}`;
    case "list":
      return `write a list of sections${such}`;
    case "names":
      return `write a list of names${such}`;
    case "window":
      return `write ${orWord}{ min: … }, { max: … } or both${such}`;
    case "requirement":
      return `write a quantity or { min: …, max: … }${such}`;
    case "quantity":
      return `write a quantity${such}`;
    case "word":
    case "words":
      return `write ${(words ?? []).join(", ")}`;
    default:
      return `write text${such}`;
  }
}
