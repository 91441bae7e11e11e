import { element } from "./element.ts";

/** A box of its own to scroll in, which a keyboard reaches. */
export function box(label: string, children: readonly Node[]): HTMLElement {
  return element("div", { class: "box", attributes: { tabindex: "0", role: "region", "aria-label": label } }, children);
}
