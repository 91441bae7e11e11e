import { readBrief } from "../../src/brief/read.ts";
import { writeBrief } from "../../src/brief/write.ts";
import type { Brief } from "../../src/model.ts";

/** A brief as it is read from the text that its values are written to: what a page sweeps again is that text. */
export function asRead({ sweep, ...rest }: Brief): Brief {
  return readBrief(writeBrief({ ...rest, sweep, asked: [] }), "brief.yaml", {
    series: (name) => sweep.wires.find((one) => one.name === name)!,
    material: (name) => sweep.materials.find((one) => one.name === name)!,
    ends: (name) => sweep.ends.find((one) => one.name === name)!,
  });
}
