import { element } from "../parts/element.ts";

/**
 * A quiet group of radio buttons, one for each length at which springs are looked at.
 *
 * @param group   the group's name within the page, and its words
 * @param names   of the lengths, in order
 * @param looked  place of the one that is on
 * @param onLook  told the place of a length that is put on
 */
export function lengthButtons(
  group: { readonly name: string; readonly words: string },
  names: readonly string[],
  looked: number,
  onLook: (index: number) => void,
): HTMLElement {
  const buttons = names.map((name, index) => {
    const on: Readonly<Record<string, string>> = index === looked ? { checked: "" } : {};
    const input = element("input", { attributes: { type: "radio", name: group.name, value: String(index), ...on } });
    input.addEventListener("change", () => onLook(index));
    return element("label", {}, [input, name]);
  });
  return element("fieldset", { class: "lengths screen-only" }, [element("legend", { text: group.words }), ...buttons]);
}

/** The place of the length that is on in a part of the page; 0, the free length, where none of so many is. */
export function lookedAt(host: HTMLElement, group: string, count: number): number {
  const value = host.querySelector<HTMLInputElement>(`input[name="${group}"]:checked`)?.value;
  const index = Number(value ?? 0);
  return index < count ? index : 0;
}
