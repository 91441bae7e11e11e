import { designToBrief } from "../../brief/design-to-brief.ts";
import { writeBrief } from "../../brief/write.ts";
import type { Brief, Design } from "../../model.ts";
import type { SpringState } from "../../report/drawing/lengths-shown.ts";
import { fileName } from "../../report/files/file-name.ts";
import { designJson } from "../../report/files/json.ts";
import { springSolid } from "../../report/solid/body.ts";
import { springDxf } from "../../report/solid/dxf.ts";
import { exportLine, exportSolid } from "../parts/download.ts";

/**
 * Buttons that take the chosen spring away: its drawing as shown, its figures, itself as a brief to check, and for CAD.
 *
 * @param brief    the brief that it answers
 * @param design   the spring
 * @param place    which it is, in a few words that name the files
 * @param looked   the length that is looked at
 * @param drawing  writes the drawing at that length
 */
export function exportSpring(
  brief: Brief,
  design: Design,
  place: string,
  looked: () => SpringState,
  drawing: () => string,
): HTMLElement {
  const name = (what: string, ending: string) => fileName(brief.title, `${place} ${what}`, ending);
  return exportLine("Take this spring away:", [
    ["drawing, SVG", () => ({ name: name("drawing", "svg"), type: "image/svg+xml", content: `${drawing()}\n` })],
    ["figures, JSON", () => ({ name: name("", "json"), type: "application/json", content: designJson(brief, design) })],
    [
      "brief to check, YAML",
      () => ({ name: name("check", "yaml"), type: "application/yaml", content: writeBrief(designToBrief(brief, design)) }),
    ],
    ["drawing, DXF", () => ({ name: name("drawing", "dxf"), type: "image/vnd.dxf", content: springDxf(brief, design) })],
    ...exportSolid(
      (ending) => name(looked().name, ending),
      () => springSolid(brief, design, looked()),
    ),
  ]);
}
