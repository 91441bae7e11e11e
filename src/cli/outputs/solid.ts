import { pointNames } from "../../constrain/design.ts";
import { checkWritable, writeText } from "../../disk/files.ts";
import type { Brief } from "../../model.ts";
import { fileName } from "../../report/files/file-name.ts";
import type { Solid } from "../../report/solid/body.ts";
import { glbFile } from "../../report/solid/glb.ts";
import { stepFile } from "../../report/solid/step.ts";
import type { Output } from "./output-paths.ts";

/** The files that hold a spring as a solid. */
export interface SolidFiles {
  readonly step?: string;
  readonly glb?: string;
  /** The length that it is shown at: `free`, `solid` or the name of a load point; absent: free, or in a folder each of them. */
  readonly at?: string;
  /** Options that name a folder. */
  readonly inFolder?: readonly string[];
}

const WRITERS = { step: stepFile, glb: glbFile } as const;

/** The options that name such a file. */
export const SOLIDS = Object.keys(WRITERS) as readonly (keyof typeof WRITERS)[];

/** A file of a spring at one length. */
interface StateFile extends Output {
  readonly kind: keyof typeof WRITERS;
  readonly state: string;
}

/** The lengths at which a spring can be shown, by name. */
export function stateNames({ load }: Brief): readonly string[] {
  return ["free", ...pointNames(load), "solid"];
}

/** The files asked for; those in a folder are named after the brief and the length. */
export function solidOutputs(brief: Brief, files: SolidFiles): StateFile[] {
  return SOLIDS.flatMap((kind) => {
    const path = files[kind];
    if (path === undefined) return [];
    const option = `--${kind}`;
    if (!files.inFolder?.includes(kind)) return [{ kind, option, path, state: files.at ?? "free" }];
    const states = files.at === undefined ? stateNames(brief) : [files.at];
    const before = path.slice(0, -kind.length);
    return states.map((state) => ({ kind, option, path: `${before}${fileName(state, "", kind)}`, state }));
  });
}

/**
 * Make sure that they can be written.
 *
 * @throws ProblemError as `checkWritable`
 */
export function checkSolidFiles(brief: Brief, files: SolidFiles): void {
  for (const { path, option } of solidOutputs(brief, files)) checkWritable(path, option);
}

/**
 * Write them.
 *
 * @param solidAt  the spring, or the pair, at a length by its name
 * @throws ProblemError `unwritable`
 */
export function writeSolidFiles(brief: Brief, files: SolidFiles, solidAt: (state: string) => Solid): void {
  for (const { kind, path, option, state } of solidOutputs(brief, files)) writeText(path, WRITERS[kind](solidAt(state)), option);
}
