import type { Brief, Design, EndStyle, Pair } from "../../../src/model.ts";
import { springStates } from "../../../src/report/drawing/lengths-shown.ts";
import { type PairState, pairSolid, pairStates, type Solid, springSolid } from "../../../src/report/solid/body.ts";
import { brief, ends, spring } from "../fixture.ts";

/** An invented spring with one end style, at the length of a name, as files for CAD hold it. */
export function solidOf(style: string, state = "free", changes: Partial<Design> = {}, asked: Partial<Brief> = {}): Solid {
  const endStyle = ends.find(({ name }) => name === style) as EndStyle;
  const design = spring({ endStyle, ...changes });
  const own = { ...brief, ...asked };
  const at = springStates(own, design).find(({ name }) => name === state);
  if (at === undefined) throw new Error(`the spring has no length ${state}`);
  return springSolid(own, design, at);
}

/** Two invented springs in one another; the outer is solid first. */
export const pair: Pair = {
  rank: 1,
  share: 0.6,
  mass: 0.02,
  relativeCost: 0.03,
  rate: 9,
  clearance: 0.001,
  toleranceRoom: null,
  outer: { ...spring({ wireDiameter: 0.003, meanDiameter: 0.024, totalTurns: 7 }), hand: "right" },
  inner: { ...spring({ totalTurns: 6 }), hand: "left" },
};

/** The same at the length of a name. */
export function pairAt(state: string): Solid {
  return pairSolid(brief, pair, pairStates(brief, pair).find(([{ name }]) => name === state) as PairState);
}
