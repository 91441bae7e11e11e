import { byId, element, htmlNodes } from "./element.ts";

/** A sheet that can be opened from the page and printed by itself. */
export interface Paper {
  readonly name: string;
  /** The sheet as markup, whose text is all escaped. */
  readonly write: () => string;
}

/** Quiet buttons, one for each sheet; its sheet opens over the page, and Escape or Close gives the page back. */
export function paperButtons(papers: readonly Paper[]): HTMLElement[] {
  return papers.map((paper) => {
    const button = element("button", { text: paper.name, attributes: { type: "button", "aria-haspopup": "dialog" } });
    button.addEventListener("click", () => openPaper(paper));
    return button;
  });
}

/** The buttons of the sheet itself; asked once. */
export function wirePaper(): void {
  byId("paper-print").addEventListener("click", () => window.print());
  byId("paper-close").addEventListener("click", () => dialog().close());
  // A closed sheet leaves nothing that a search in the page would find.
  dialog().addEventListener("close", () => byId("paper-sheet").replaceChildren());
}

function openPaper({ name, write }: Paper): void {
  byId("paper-name").textContent = name;
  byId("paper-sheet").replaceChildren(...htmlNodes(write()));
  dialog().showModal();
  dialog().scrollTop = 0;
}

function dialog(): HTMLDialogElement {
  return byId("paper") as HTMLDialogElement;
}
