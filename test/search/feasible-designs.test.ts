import { describe, expect, it } from "vitest";
import { readBrief } from "../../src/brief/read.ts";
import type { Design } from "../../src/model.ts";
import { survivors } from "../../src/search/feasible-designs.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { shipped } from "../catalog/shipped.ts";

const catalogs = "wires: [iso-r20], materials: [astm-a228, astm-a229], ends: [squared-ground, squared]";
const briefOf = (load: string, how: string) =>
  readBrief(`practice: handbook\nload: ${load}\nsweep: { ${catalogs}, ${how} }\n`, "brief.yaml", shipped);

const exactForce = "{ force: 20 N, deflection: 10 mm }";
const rateWindow = "{ rate: { min: 2 N/mm, max: 3 N/mm }, largestForce: 60 N }";

describe("the survivors of a brief", () => {
  it.each([
    ["with the diameter solved", briefOf(exactForce, "turns: quarter")],
    ["on the grid", briefOf(rateWindow, "turns: whole, meanDiameter: { step: 0.5 mm }")],
    ["with turns that follow", briefOf(exactForce, "turns: any, meanDiameter: { step: 0.5 mm }")],
    ["over the reals", briefOf(rateWindow, "turns: whole, meanDiameter: exact")],
  ])("are the springs that its sweep ranks, no more and no fewer: %s", (_, brief) => {
    const all: Design[] = [];
    survivors(brief, (design) => all.push(design));
    const { feasible, designs } = sweep(brief, { top: 1_000_000 });
    expect(feasible).toBeGreaterThan(10);
    expect(all.length).toBe(feasible);
    const texts = (found: readonly Design[]) => found.map(({ rank, ...figures }) => JSON.stringify(figures)).sort();
    expect(texts(all)).toEqual(texts(designs));
    expect(new Set(all.map(({ rank }) => rank))).toEqual(new Set([0]));
  });

  it("end where they are told to", () => {
    let told = 0;
    const stop = new Error("enough");
    const take = () => {
      told++;
      if (told === 3) throw stop;
    };
    expect(() => survivors(briefOf(exactForce, "turns: quarter"), take)).toThrow(stop);
    expect(told).toBe(3);
  });
});
