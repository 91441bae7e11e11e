/** What an element is given; text never becomes markup. */
interface Given {
  readonly class?: string;
  readonly text?: string;
  readonly attributes?: Readonly<Record<string, string>>;
}

/** A new element with its children. */
export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  given: Given = {},
  children: readonly (Node | string)[] = [],
): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  if (given.class !== undefined) made.className = given.class;
  if (given.text !== undefined) made.textContent = given.text;
  for (const [name, value] of Object.entries(given.attributes ?? {})) made.setAttribute(name, value);
  made.append(...children);
  return made;
}

/** The element of the page with this id. @throws where the page lacks it, which is a fault of its writer */
export function byId(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (!found) throw new Error(`the page has no element ${id}`);
  return found;
}

/** A JSON block of the page; null where it carries none of this id. */
export function jsonBlock<T>(id: string): T | null {
  return JSON.parse(document.getElementById(id)?.textContent ?? "null") as T | null;
}

/** An SVG element from its text, which is parsed as XML: script in it would not run, and there is none. */
export function svgElement(text: string): Element {
  return document.importNode(new DOMParser().parseFromString(text, "image/svg+xml").documentElement, true);
}

/** Nodes from the markup of a sheet that the report wrote; script in it would not run, and there is none. */
export function htmlNodes(markup: string): Node[] {
  return [...document.adoptNode(new DOMParser().parseFromString(markup, "text/html").body).childNodes];
}

/** A box of its own to scroll in, which a keyboard reaches. */
export function box(label: string, children: readonly Node[]): HTMLElement {
  return element("div", { class: "box", attributes: { tabindex: "0", role: "region", "aria-label": label } }, children);
}
