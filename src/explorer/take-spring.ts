import { pinnedBrief } from "../brief/pin.ts";
import { writeBrief } from "../brief/write.ts";
import type { Brief, Design } from "../model.ts";
import { fileName } from "../report/file-name.ts";
import { designJson } from "../report/json.ts";
import { takeLine } from "./download.ts";

/**
 * Buttons that take the chosen spring away: its drawing as shown, its figures, and itself as a brief to check.
 *
 * @param brief    the brief that it answers
 * @param design   the spring
 * @param place    which it is, in a few words that name the files
 * @param drawing  writes the drawing at the length that is looked at
 */
export function takeSpring(brief: Brief, design: Design, place: string, drawing: () => string): HTMLElement {
  const name = (what: string, ending: string) => fileName(brief.title, `${place} ${what}`, ending);
  return takeLine("Take this spring away:", [
    ["drawing, SVG", () => ({ name: name("drawing", "svg"), type: "image/svg+xml", content: `${drawing()}\n` })],
    ["figures, JSON", () => ({ name: name("", "json"), type: "application/json", content: designJson(brief, design) })],
    [
      "brief to check, YAML",
      () => ({ name: name("check", "yaml"), type: "application/yaml", content: writeBrief(pinnedBrief(brief, design)) }),
    ],
  ]);
}
