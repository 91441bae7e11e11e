import { readFileSync } from "node:fs";
import type { Brief } from "../../../src/model.ts";
import { read } from "../../brief/reading.ts";

/** The demo brief of nested springs. */
export const demo: Brief = read(readFileSync("reports/press-return-nested.yaml", "utf8"), "reports/press-return-nested.yaml");

const common = `
sweep: { wires: [iso-r20], materials: [en-sh], ends: [squared-ground, squared], turns: half }
service: { seats: parallel plates, set: as wound }
limits: { turns: { min: 5, max: 15 }, buckling: { safety: 1.5 } }
`;

/** Two points of 30 N/mm and a free length of 66.7 mm, at a share of the forces. */
const load = (share: number) =>
  `load: { points: [{ length: 60 mm, force: ${200 * share} N }, { length: 50 mm, force: ${500 * share} N }] }`;

/** A small nested brief whose pairs can all be looked at. */
export const small: Brief = read(
  `practice: handbook\nnested: 2\n${load(1)}\nenvelope: { bore: 30 mm, rod: 6 mm, clearance: 4 % }${common}`,
);

/** The same, written out by hand for one spring of the pair. */
export const smallAlone = {
  outer: (share: number): Brief => read(`practice: handbook\n${load(share)}\nenvelope: { bore: 30 mm, clearance: 4 % }${common}`),
  inner: (share: number): Brief =>
    read(`practice: handbook\n${load(1 - share)}\nenvelope: { rod: 6 mm, clearance: 4 % }${common}`),
};
