/** The library's face, in the order in which the page of the library describes it. */

// The acts.

export { check } from "./studies/check.ts";
export { nestedSweep } from "./studies/nested.ts";
export { relax } from "./studies/relax.ts";

// Every design that fits, and the best of them.

export { survivors } from "./search/feasible-designs.ts";
export { sweep } from "./studies/sweep.ts";

// A brief from its file or its text, and back.

export { readBrief, readCheckBrief } from "./brief/read.ts";
export { writeBrief } from "./brief/write.ts";
export { loadBrief, loadCheckBrief, shippedCatalogs } from "./disk/load-brief.ts";

// What is wrong in a brief.

export { type Problem, ProblemError, problemLine } from "./problem.ts";

// Catalogs of one's own.

export { lookupOn, type Shelf } from "./catalog/find.ts";
export { type NamedText, readShelf, readText, readTextBeside } from "./disk/files.ts";

// What goes in and comes out.

export type * from "./model.ts";
