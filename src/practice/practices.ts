import type { PracticeName } from "../model.ts";
import type { Practice } from "./choices.ts";
import { en13906 } from "./en13906.ts";
import { handbook } from "./handbook.ts";

/** The two practices by name; a brief says which, for there is no default. */
export const practices: Readonly<Record<PracticeName, Practice>> = { handbook, en13906 };
