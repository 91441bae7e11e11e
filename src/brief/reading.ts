import type { Asked, DefaultTaken } from "../model.ts";
import type { Problem } from "../problem.ts";
import type { BriefDocument } from "./document.ts";

/** What gathers while a brief is read; the only thing that reading changes. */
export interface Reading {
  readonly file: string;
  readonly source: BriefDocument;
  readonly problems: Problem[];
  readonly asked: Asked[];
  readonly defaults: DefaultTaken[];
}
