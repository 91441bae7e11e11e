/** The library's face, in the order in which the page of the library describes it. */

// The acts.

export { check } from "./check.ts";
export { nestedSweep } from "./nested.ts";
export { relax } from "./relax.ts";
export { survivors } from "./survivors.ts";
export { sweep } from "./sweep.ts";

// A brief from its file or its text, and back.

export { readBrief, readCheckBrief } from "./brief/read.ts";
export { writeBrief } from "./brief/write.ts";
export { loadBrief, loadCheckBrief, shippedCatalogs } from "./load.ts";

// What is wrong in a brief.

export { type Problem, ProblemError, problemLine } from "./problem.ts";

// Catalogs of one's own.

export { lookupOn, type Shelf } from "./catalog/find.ts";
export { type NamedText, readShelf, readText, readTextBeside } from "./files.ts";

// What goes in and comes out.

export type * from "./model.ts";
