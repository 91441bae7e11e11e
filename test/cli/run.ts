import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

/** The built program. */
export const program = fileURLToPath(new URL("../../dist/cli.js", import.meta.url));

/** What a run leaves to see. */
export interface Run {
  readonly stdout: string;
  readonly stderr: string;
  readonly status: number | null;
}

/** A new empty folder to run in. */
export function newFolder(): string {
  return mkdtempSync(join(tmpdir(), "coilsieve-"));
}

/** Runs the program as a user would and waits for its end. */
export function run(args: readonly string[], cwd = newFolder(), env: NodeJS.ProcessEnv = {}): Run {
  return runProgram(program, args, cwd, env);
}

/** The same with the program at another place. */
export function runProgram(file: string, args: readonly string[], cwd: string, env: NodeJS.ProcessEnv = {}): Run {
  const { stdout, stderr, status } = spawnSync(process.execPath, [file, ...args], {
    cwd,
    encoding: "utf8",
    env: { ...process.env, ...env },
    maxBuffer: 1 << 28,
  });
  return { stdout, stderr, status };
}

/** Runs the program with a reader that closes the pipe after the first bytes. */
export function runWithClosingReader(args: readonly string[], cwd: string): Promise<Omit<Run, "stdout">> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [program, ...args], { cwd, stdio: ["ignore", "pipe", "pipe"] });
    let stderr = "";
    child.stderr.on("data", (chunk) => {
      stderr += chunk;
    });
    child.stdout.once("data", () => child.stdout.destroy());
    child.on("error", reject);
    child.on("close", (status) => resolve({ stderr, status }));
  });
}

/** A small brief of which something fits. */
export const fits = `practice: handbook
load: { force: 20 N, deflection: 10 mm }
sweep: { wires: [iso-r20], materials: [astm-a228, astm-a229], ends: [squared-ground, squared] }
`;

/** The same with a free length that nothing fits. */
export const fitsNothing = `${fits}envelope: { freeLength: { max: 12 mm } }\n`;
