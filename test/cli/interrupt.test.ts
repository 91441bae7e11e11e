import { spawn } from "node:child_process";
import { readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { asTerminal } from "./hooks.ts";
import { newFolder, program } from "./run.ts";

const sweep = "sweep: { wires: [iso-r20, iso-r40], materials: [astm-a228, astm-a229, astm-a227], ends: [squared-ground] }";
const drawn = "service: { scatter: { draws: 100000, turns: 0.1, modulus: 2 % } }";

const drawing = `practice: handbook
load: { points: [{ length: 46 mm, force: 20 N ± 4 N }, { length: 32 mm, force: 48 N ± 6 N }] }
${sweep}
${drawn}
`;

/** The load by windows leaves stress without a shape, so that every position is looked at. */
const windows = `practice: handbook
load: { points: [{ length: 46 mm, force: { min: 18 N, max: 24 N } }, { length: 32 mm, force: { min: 40 N, max: 55 N } }] }
${sweep.replace(" }", ", turns: quarter, meanDiameter: { step: 0.002 mm } }")}
`;

const nested = `practice: handbook
load: { rate: 8 N/mm, points: [{ length: 60 mm, force: 160 N }] }
sweep: { wires: [iso-r20, iso-r40, en-10270, us-music], materials: [astm-a228, astm-a229, astm-a227], ends: [squared-ground, squared] }
envelope: { bore: 60 mm }
nested: 2
`;

/** Runs a command on a terminal, and stops it by Ctrl-C once it says what it is doing. */
async function stoppedAt(words: RegExp, args: readonly string[], brief: string) {
  const folder = newFolder();
  writeFileSync(join(folder, "brief.yaml"), brief);
  const env = { ...process.env, ...asTerminal(folder) };
  const before = readdirSync(folder).sort();
  const child = spawn(process.execPath, [program, ...args], { cwd: folder, env });
  let [said, printed, stopped] = ["", "", false];
  child.stdout.on("data", (chunk) => {
    printed += chunk;
  });
  child.stderr.on("data", (chunk) => {
    said += chunk;
    if (!stopped && words.test(said)) stopped = child.kill("SIGINT");
  });
  const status = await new Promise((resolve) => child.on("close", resolve));
  // What came last stands on a line that was erased before it.
  const [last] = said.split("\u001b[2K").slice(-1);
  return { last, printed, status, isEmpty: readdirSync(folder).sort().join() === before.join() };
}

describe("Ctrl-C", { timeout: 180_000 }, () => {
  it.each([
    ["springs are drawn", /drawing springs/, ["sweep", "brief.yaml", "--json", "a.json"], drawing],
    ["limits are priced", /pricing the limits/, ["relax", "brief.yaml", "--json", "a.json"], windows],
    ["pairs are looked for", /looking for pairs/, ["sweep", "brief.yaml", "--csv", "a.csv"], nested],
  ])("while %s stops with 130, says how far it got, and leaves no file", async (_title, words, args, brief) => {
    const { last, ...left } = await stoppedAt(words, args, brief);
    expect(last).toMatch(/^stopped: brief, .* after [\d.]+ s(, .*)?; nothing of it was written\n$/);
    expect(last).toMatch(words);
    expect(left).toEqual({ printed: "", status: 130, isEmpty: true });
  });
});
