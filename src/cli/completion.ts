import { printOut } from "../files.ts";
import { ProblemError } from "../problem.ts";
import { VERSION } from "../version.ts";
import type { Completion } from "./completed.ts";
import { bashScript } from "./completion-bash.ts";
import { fishScript } from "./completion-fish.ts";
import { zshScript } from "./completion-zsh.ts";

const scripts = { bash: bashScript, zsh: zshScript, fish: fishScript } as const;

/**
 * Prints the script that lets a shell complete what is typed.
 *
 * @param shell       as typed
 * @param completion  the program's own commands and options
 * @throws ProblemError `unknownName` for a shell without a script
 */
export async function runCompletion(shell: string, completion: Completion): Promise<void> {
  const script = new Map<string, (completion: Completion) => string>(Object.entries(scripts)).get(shell);
  const got = `no script for "${shell}"`;
  if (script === undefined) {
    throw new ProblemError([
      { code: "unknownName", key: "completion", got, want: `it takes ${Object.keys(scripts).join(", ")}` },
    ]);
  }
  // Last, for zsh wants a line of its own first.
  return printOut(`${script(completion)}# Made by coilsieve ${VERSION}.\n`);
}
