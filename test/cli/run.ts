import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { MessageChannel, receiveMessageOnPort, Worker } from "node:worker_threads";

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

/** Calls the program in the thread that stands ready for it. */
type Call = (args: readonly string[], env: Readonly<Record<string, string>>) => Run;

/** A thread that never answers is told of, ms. */
const HUNG = 300_000;

let call: Call | undefined;

function callsInThread(): Call {
  const { port1: here, port2: port } = new MessageChannel();
  const ended = new Int32Array(new SharedArrayBuffer(4));
  const thread = new Worker(new URL("./thread.mjs", import.meta.url), {
    execArgv: [],
    workerData: { entry: pathToFileURL(program).href, port, ended },
    transferList: [port],
  });
  thread.unref();
  return (args, env) => {
    Atomics.store(ended, 0, 0);
    here.postMessage({ args, env });
    Atomics.wait(ended, 0, 0, HUNG);
    const answer = receiveMessageOnPort(here)?.message as Run | { readonly fault: string } | undefined;
    if (answer === undefined) throw new Error(`no answer from coilsieve ${args.join(" ")}`);
    if ("fault" in answer) throw new Error(answer.fault);
    return answer;
  };
}

/**
 * Runs the program as a user would and waits for its end. It runs in a thread of this process that has loaded it already, which takes
 * a tenth of the time that a process does; what only a process shows is asked of `runProcess`.
 */
export function run(args: readonly string[], cwd = newFolder(), env: Readonly<Record<string, string>> = {}): Run {
  const before = process.cwd();
  call ??= callsInThread();
  process.chdir(cwd);
  try {
    return call(args, env);
  } finally {
    process.chdir(before);
  }
}

/** The same in a process of its own, with the streams, signals, threads and memory that only that has. */
export function runProcess(args: readonly string[], cwd = newFolder(), env: Readonly<Record<string, string>> = {}): Run {
  return runProgram(program, args, cwd, env);
}

/** The same with the program at another place. */
export function runProgram(file: string, args: readonly string[], cwd: string, env: Readonly<Record<string, string>> = {}): Run {
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
