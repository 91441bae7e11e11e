import init, { type OpenCascadeInstance } from "replicad-opencascadejs";
import { beforeAll, describe, expect, it } from "vitest";
import type { Solid } from "../../../src/report/solid/body.ts";
import { stepFile } from "../../../src/report/solid/step.ts";
import { solidOf } from "./springs.ts";
import { exactVolume } from "./step-file.ts";

/** How near the kernel is asked to come to a volume. */
const EPSILON = 1e-4;

let kernel: OpenCascadeInstance;
beforeAll(async () => {
  kernel = await init();
});

/** A solid as the kernel reads it. */
function read(solid: Solid) {
  kernel.FS.writeFile("/spring.step", stepFile(solid));
  const reader = new kernel.STEPControl_Reader();
  reader.ReadFile("/spring.step");
  reader.TransferRoots(new kernel.Message_ProgressRange());
  const shape = reader.OneShape();
  const [exact, usual, box] = [new kernel.GProp_GProps(), new kernel.GProp_GProps(), new kernel.Bnd_Box()];
  kernel.BRepGProp.VolumeProperties(shape, exact, EPSILON, false, false);
  kernel.BRepGProp.VolumeProperties(shape, usual, false, false, false);
  kernel.BRepBndLib.AddOptimal(shape, box, false, false);
  const corner = (at: ReturnType<typeof box.CornerMin>) => [at.X(), at.Y(), at.Z()];
  return {
    isValid: new kernel.BRepCheck_Analyzer(shape, true, false, false).IsValid(),
    volume: exact.Mass(),
    usualVolume: usual.Mass(),
    low: corner(box.CornerMin()),
    high: corner(box.CornerMax()),
  };
}

describe("a kernel that shares no code with us reads", () => {
  it.each([
    ["squared", "free", "right"],
    ["squared-ground", "free", "left"],
    ["plain-ground", "free", "right"],
    ["squared-ground", "solid", "right"],
  ] as const)("a %s spring, %s, %s-hand, as valid, with its volume and box", (style, state, hand) => {
    const solid = solidOf(style, state, { totalTurns: 4, freeLength: 0.03 }, { order: { hand } });
    const { coil } = solid.bodies[0]!;
    const { isValid, volume, usualVolume, low, high } = read(solid);
    expect(isValid).toBe(true);
    expect(Math.abs(volume / exactVolume(coil) - 1)).toBeLessThan(1e-4);
    // The call without a precision, which programs make: it goes wrong on faces of many turns.
    expect(Math.abs(usualVolume / exactVolume(coil) - 1)).toBeLessThan(1e-3);
    const outside = (coil.meanDiameter + coil.wireDiameter) / 2;
    const box = [
      ...low.map((value, axis) => value - [-outside, -outside, 0][axis]!),
      ...high.map((value, axis) => value - [outside, outside, coil.length][axis]!),
    ];
    for (const off of box) expect(Math.abs(off)).toBeLessThan(0.01);
  });
});
