/** The library's face: the acts, the loaders and readers they need, and the types of what goes in and comes out. */
export { readBrief, readCheckBrief } from "./brief/read.ts";
export { writeBrief } from "./brief/write.ts";
export { lookupOn, type Shelf } from "./catalog/find.ts";
export { check } from "./check.ts";
export { type NamedText, readShelf, readText, readTextBeside } from "./files.ts";
export { loadBrief, loadCheckBrief, shippedCatalogs } from "./load.ts";
export type * from "./model.ts";
export { nestedSweep } from "./nested.ts";
export { type Problem, ProblemError, problemLine } from "./problem.ts";
export { relax } from "./relax.ts";
export { survivors } from "./survivors.ts";
export { sweep } from "./sweep.ts";
