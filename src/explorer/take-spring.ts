import { pinnedBrief } from "../brief/pin.ts";
import { writeBrief } from "../brief/write.ts";
import type { Brief, Design } from "../model.ts";
import { fileName } from "../report/file-name.ts";
import { designJson } from "../report/json.ts";
import { springSolid } from "../report/solid/body.ts";
import { springDxf } from "../report/solid/dxf.ts";
import type { SpringState } from "../report/spring-states.ts";
import { takeLine, takeSolid } from "./download.ts";

/**
 * Buttons that take the chosen spring away: its drawing as shown, its figures, itself as a brief to check, and for CAD.
 *
 * @param brief    the brief that it answers
 * @param design   the spring
 * @param place    which it is, in a few words that name the files
 * @param looked   the length that is looked at
 * @param drawing  writes the drawing at that length
 */
export function takeSpring(
  brief: Brief,
  design: Design,
  place: string,
  looked: () => SpringState,
  drawing: () => string,
): HTMLElement {
  const name = (what: string, ending: string) => fileName(brief.title, `${place} ${what}`, ending);
  return takeLine("Take this spring away:", [
    ["drawing, SVG", () => ({ name: name("drawing", "svg"), type: "image/svg+xml", content: `${drawing()}\n` })],
    ["figures, JSON", () => ({ name: name("", "json"), type: "application/json", content: designJson(brief, design) })],
    [
      "brief to check, YAML",
      () => ({ name: name("check", "yaml"), type: "application/yaml", content: writeBrief(pinnedBrief(brief, design)) }),
    ],
    ["drawing, DXF", () => ({ name: name("drawing", "dxf"), type: "image/vnd.dxf", content: springDxf(brief, design) })],
    ...takeSolid(
      (ending) => name(looked().name, ending),
      () => springSolid(brief, design, looked()),
    ),
  ]);
}
