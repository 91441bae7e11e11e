import { element } from "./element.ts";

/** A file that a reader takes away from the page. */
export interface Download {
  readonly name: string;
  /** Its media type. */
  readonly type: string;
  readonly content: string | Blob;
}

/** Hand a file to the browser, which keeps it where its reader's files go. */
export function download({ name, type, content }: Download): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = element("a", { attributes: { href: address, download: name } });
  document.body.append(link);
  link.click();
  link.remove();
  // The browser has begun to read it by the time that other work runs.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/**
 * A line of quiet buttons that take something away, each making its file when it is pressed.
 *
 * @param words    what stands before them
 * @param buttons  words of each, and its file; null where it cannot be made
 */
export function takeLine(
  words: string,
  buttons: readonly (readonly [words: string, make: () => Download | Promise<Download | null>])[],
): HTMLElement {
  const made = buttons.map(([text, make]) => {
    const button = element("button", { text, attributes: { type: "button" } });
    button.addEventListener("click", async () => {
      const file = await make();
      if (file) download(file);
    });
    return button;
  });
  return element("p", { class: "papers take screen-only" }, [element("span", { class: "soft", text: words }), ...made]);
}
