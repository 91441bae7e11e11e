import { element } from "./element.ts";

/** What a tip says: labels with their figures. */
export type TipEntries = readonly (readonly [label: string, text: string])[];

let made: HTMLElement | undefined;

/** The page's one tip, beside the pointer; it is made when it is first needed. */
function theTip(): HTMLElement {
  if (made === undefined) {
    made = element("div", { class: "tip", attributes: { id: "tip", hidden: "" } });
    document.body.append(made);
  }
  return made;
}

/** Show a tip beside the pointer; null takes it away. */
export function showTip(pointer: { readonly clientX: number; readonly clientY: number }, entries: TipEntries | null): void {
  if (entries === null && made === undefined) return;
  const tip = theTip();
  tip.hidden = entries === null;
  if (entries === null) return;
  tip.replaceChildren(...entries.flatMap(([label, text]) => [element("span", { text: label }), element("span", { text })]));
  const { width, height } = tip.getBoundingClientRect();
  tip.style.left = `${Math.max(4, Math.min(pointer.clientX + 14, window.innerWidth - width - 4))}px`;
  tip.style.top = `${Math.max(4, Math.min(pointer.clientY + 14, window.innerHeight - height - 4))}px`;
}
