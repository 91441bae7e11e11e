import { checkWritable, printError, writeText } from "../../disk/files.ts";
import type { Brief, Design, EndStyle } from "../../model.ts";
import { oneLine, ProblemError } from "../../problem.ts";
import { sheetPage } from "../../report/datasheet/page.ts";
import { type SpringState, springStates } from "../../report/drawing/lengths-shown.ts";
import { drawnHand, springDrawing } from "../../report/drawing/spring.ts";
import { stateDrawing } from "../../report/drawing/spring-at-length.ts";
import { springSolid } from "../../report/solid/body.ts";
import { springDxf } from "../../report/solid/dxf.ts";
import { type SolidFiles, stateNames, writeSolidFiles } from "./solid.ts";

/** The files that show one spring; `at` holds for the drawing too, which without it shows free and solid. */
export interface SpringFiles extends SolidFiles {
  /** The data sheet, HTML. */
  readonly sheet?: string;
  /** The drawing, SVG. */
  readonly drawing?: string;
  /** The drawing for CAD, DXF. */
  readonly dxf?: string;
}

/** Each option with what a file of it is named. */
const examples = {
  sheet: "sheet.html",
  drawing: "spring.svg",
  step: "spring.step",
  dxf: "spring.dxf",
  glb: "spring.glb",
} as const;
const OPTIONS = Object.keys(examples) as readonly (keyof typeof examples)[];

/**
 * Make sure that the files asked for can be written.
 *
 * @throws ProblemError `pageOnStdout`, or as `checkWritable`
 */
export function checkSpringFiles(files: SpringFiles): void {
  for (const name of OPTIONS) {
    const path = files[name];
    if (path === undefined) continue;
    const problem = { code: "pageOnStdout", key: `--${name}`, got: "it is not printed" };
    if (path === "-") throw new ProblemError([{ ...problem, want: `name a file, such as ${examples[name]}` }]);
    checkWritable(path, `--${name}`);
  }
  if (files.at === undefined || [files.drawing, files.step, files.glb].some((path) => path !== undefined)) return;
  const problem = { code: "noDrawing", key: "--at", got: "no file is asked that shows one length" };
  throw new ProblemError([{ ...problem, want: "add --drawing, --step or --glb with a file" }]);
}

/**
 * Make sure that a brief has the length at which its spring is to be drawn.
 *
 * @throws ProblemError `noPoint`
 */
export function checkAt(brief: Brief, { at }: SpringFiles): void {
  if (at === undefined) return;
  const names = stateNames(brief);
  if (names.includes(at)) return;
  const got = `the load has no point ${oneLine(at)}`;
  throw new ProblemError([{ code: "noPoint", key: "--at", got, want: `name one of ${names.map(oneLine).join(", ")}` }]);
}

/**
 * Write the files asked for of one spring, or say why there are none.
 *
 * @param brief    the brief that it answers
 * @param design   the spring; undefined where there is none to show
 * @param without  why there is none
 * @param files    the files asked for
 * @throws ProblemError `unwritable`
 */
export async function writeSpringFiles(
  brief: Brief,
  design: Design | undefined,
  without: string,
  files: SpringFiles,
): Promise<void> {
  const { sheet, drawing, dxf } = files;
  const asked = springOptions(files);
  if (asked.length === 0) return;
  if (design === undefined) return printError(`${asked.join(", ")}: ${without}\n`);
  if (sheet !== undefined) writeText(sheet, await sheetPage(brief, design), "--sheet");
  if (dxf !== undefined) writeText(dxf, springDxf(brief, design), "--dxf");
  const states = springStates(brief, design);
  const stateOf = (name: string | undefined) => states.find((state) => state.name === name);
  writeSolidFiles(brief, files, (name) => springSolid(brief, design, stateOf(name) as SpringState));
  if (drawing === undefined) return;
  const ends = brief.sweep.ends.find(({ name }) => name === design.ends) as EndStyle;
  const state = stateOf(files.at);
  const hand = drawnHand(brief);
  const picture = state
    ? stateDrawing(design, ends, state, brief.units, 400, hand)
    : springDrawing(design, ends, brief.units, 640, hand);
  writeText(drawing, `${picture}\n`, "--drawing");
}

/** The options given of those that show one spring, as a message names them. */
function springOptions(files: SpringFiles): string[] {
  return OPTIONS.filter((name) => files[name] !== undefined).map((name) => `--${name}`);
}
