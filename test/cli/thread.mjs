// The thread in which `run` (run.ts) calls the program. The program's own entry is evaluated anew for each call, so that it reads what
// is typed and sets its exit status as ever; the parts that it loads stay loaded.
import fs from "node:fs";
import { syncBuiltinESMExports } from "node:module";
import { workerData } from "node:worker_threads";

const { entry, port, ended } = workerData;
const environment = { ...process.env };

/** What this call has written to stdout (1) and stderr (2). */
let written = { 1: [], 2: [] };

for (const [number, stream] of [
  [1, process.stdout],
  [2, process.stderr],
]) {
  stream.write = (text, done) => {
    written[number].push(Buffer.from(text));
    if (done) process.nextTick(done);
    return true;
  };
}

// Results that are streamed go to stdout by its number.
const { writeSync } = fs;
fs.writeSync = (file, bytes, from, ...rest) => {
  if (!(file in written)) return writeSync(file, bytes, from, ...rest);
  const left = Buffer.from(bytes).subarray(from);
  written[file].push(left);
  return left.length;
};
syncBuiltinESMExports();

let calls = 0;

/** Calls the program and gathers what it leaves. */
async function call({ args, env }) {
  written = { 1: [], 2: [] };
  process.argv = [process.execPath, entry, ...args];
  process.exitCode = 0;
  for (const name of Object.keys(process.env)) delete process.env[name];
  Object.assign(process.env, environment, env);
  await import(`${entry}?call=${calls++}`);
  return {
    stdout: Buffer.concat(written[1]).toString("utf8"),
    stderr: Buffer.concat(written[2]).toString("utf8"),
    status: process.exitCode,
  };
}

function end() {
  Atomics.store(ended, 0, 1);
  Atomics.notify(ended, 0);
}

process.on("exit", end);
port.on("message", async (typed) => {
  port.postMessage(await call(typed).catch((error) => ({ fault: error.stack })));
  end();
});
