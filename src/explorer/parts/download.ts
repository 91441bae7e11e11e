import type { Solid } from "../../report/solid/body.ts";
import { glbFile } from "../../report/solid/glb.ts";
import { stepFile } from "../../report/solid/step.ts";
import { element } from "./element.ts";

/** A file that a reader takes away from the page. */
export interface Download {
  readonly name: string;
  /** Its media type. */
  readonly type: string;
  readonly content: BlobPart;
}

/** A button that takes something away: its words, and what makes its file; null where it cannot be made. */
export type Take = readonly [words: string, make: () => Download | Promise<Download | null>];

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
 * @param buttons  in order
 */
export function exportLine(words: string, buttons: readonly Take[]): HTMLElement {
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

/** Buttons that take springs away as a solid for CAD and as a mesh for viewers, at the length that is looked at. */
export function exportSolid(name: (ending: string) => string, solid: () => Solid): readonly Take[] {
  return [
    ["solid, STEP", () => ({ name: name("step"), type: "model/step", content: stepFile(solid()) })],
    ["mesh, GLB", () => ({ name: name("glb"), type: "model/gltf-binary", content: glbFile(solid()) })],
  ];
}
