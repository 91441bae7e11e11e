import { cpSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { inflateSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { fits, fitsNothing, newFolder, run, runProcess, runProgram } from "./run.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));

function folderWith(text = fits): string {
  const folder = newFolder();
  writeFileSync(join(folder, "flap.yaml"), text);
  return folder;
}

/** Width, height and pixels of a PNG of eight bits a channel, RGBA, each line without its filter undone. */
function pngOf(file: string): { readonly width: number; readonly height: number; readonly lines: readonly Buffer[] } {
  const bytes = readFileSync(file);
  expect(bytes.subarray(0, 8)).toEqual(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]));
  const data: Buffer[] = [];
  let at = 8;
  while (at < bytes.length) {
    const length = bytes.readUInt32BE(at);
    if (bytes.toString("latin1", at + 4, at + 8) === "IDAT") data.push(bytes.subarray(at + 8, at + 8 + length));
    at += 12 + length;
  }
  const [width, height] = [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
  const raw = inflateSync(Buffer.concat(data));
  const size = raw.length / height;
  return { width, height, lines: Array.from({ length: height }, (_, i) => raw.subarray(i * size + 1, (i + 1) * size)) };
}

describe("the chart of what fits", () => {
  const folder = folderWith(`title: "Flap <b>&"\n${fits}`);
  const ran = run(["sweep", "flap.yaml", "--svg", "chart.svg", "--png", "chart.png"], folder);

  it("is written beside the table on stdout", () => {
    expect([ran.status, ran.stderr]).toEqual([0, ""]);
    expect(ran.stdout).toContain("Screening only");
    expect(readdirSync(folder).sort()).toEqual(["chart.png", "chart.svg", "flap.yaml"]);
  });

  it("is one SVG element with title, axes with units, legend, front and the words that it screens only", () => {
    const svg = readFileSync(join(folder, "chart.svg"), "utf8");
    expect(svg).toMatch(/^<svg [^>]*xmlns="http:\/\/www\.w3\.org\/2000\/svg"[\s\S]*<\/svg>\n$/);
    for (const text of ["outside diameter, mm", "free length, mm", "wire diameter, mm", "ends", "the front", "Screening only"])
      expect(svg).toContain(text);
    expect(svg).toContain("Flap &lt;b&gt;&amp;");
    expect(svg).not.toContain("<b>");
    const opened = svg.match(/<[a-z]\w*[^>]*[^/]>|<[a-z]\w*>/g)?.length;
    expect(svg.match(/<\/\w+>/g)?.length).toBe(opened);
  });

  it("is the same bytes for one of several briefs as for that brief alone", () => {
    const several = folderWith();
    writeFileSync(join(several, "latch.yaml"), fits);
    expect(runProcess(["sweep", "latch.yaml", "flap.yaml", "--svg", "out/"], several).status).toBe(0);
    expect(runProcess(["sweep", "flap.yaml", "--svg", "alone.svg"], several).status).toBe(0);
    expect(readFileSync(join(several, "out", "flap.svg"), "utf8")).toBe(readFileSync(join(several, "alone.svg"), "utf8"));
  });

  it("is a PNG of twice its size in which letters stand", () => {
    const svg = readFileSync(join(folder, "chart.svg"), "utf8");
    const [wide, high] = [/ width="(\d+)/, / height="(\d+)/].map((size) => Number(size.exec(svg)?.[1]));
    const { width, height, lines } = pngOf(join(folder, "chart.png"));
    expect([width, height]).toEqual([2 * wide!, 2 * high!]);
    // The title stands alone in the first lines of pixels, which without a font would all be white.
    const title = lines.slice(24, 60).filter((line) => new Set(line).size > 8);
    expect(title.length).toBeGreaterThan(8);
  });

  it("is of the two figures that --front names", () => {
    const other = folderWith();
    run(["sweep", "flap.yaml", "--svg", "chart.svg", "--front", "mass,solidSafety"], other);
    const svg = readFileSync(join(other, "chart.svg"), "utf8");
    expect(svg).toContain("mass, g");
    expect(svg).toContain("safety at solid");
  });

  it("is not written where nothing fits, and that is said", () => {
    const none = folderWith(fitsNothing);
    const { stderr, status } = run(["sweep", "flap.yaml", "--svg", "chart.svg"], none);
    expect(stderr).toMatch(/^--svg: nothing fits/m);
    expect(status).toBe(1);
    expect(readdirSync(none)).toEqual(["flap.yaml"]);
  });

  it.each([
    ["on stdout", ["--png", "-"], /^--png: it is not printed; .*chart\.png/],
    ["in a folder that is not there", ["--svg", "no/chart.svg"], /^--svg: there is no folder no/],
    ["of several briefs at once", ["flap.yaml", "--svg", "chart.svg"], /^--svg: 2 briefs and one file/],
  ])("%s is refused with 2 before the sweep", (_title, args, message) => {
    const other = folderWith();
    const { stdout, stderr, status } = run(["sweep", "flap.yaml", ...args], other);
    expect(stderr).toMatch(message);
    expect([stdout, status, readdirSync(other)]).toEqual(["", 2, ["flap.yaml"]]);
  });

  it("of nested springs is refused, for their page has none", () => {
    const points = "points: [{ length: 50 mm, force: 40 N }, { length: 40 mm, force: 80 N }]";
    const nested = folderWith(`${fits.replace(/load:.*/, `load: { ${points} }`)}nested: 2\nenvelope: { bore: 30 mm }\n`);
    const { stderr, status } = run(["sweep", "flap.yaml", "--svg", "chart.svg"], nested);
    expect(stderr).toMatch(/--svg: .*pairs have no chart/);
    expect(status).toBe(2);
  });

  it("as PNG is refused with one clear error where its native part cannot be loaded; as SVG it is written all the same", () => {
    const alone = folderWith();
    for (const part of ["dist", "catalogs", "package.json"]) cpSync(join(root, part), join(alone, part), { recursive: true });
    const program = join(alone, "dist", "cli.js");
    const { stdout, stderr, status } = runProgram(program, ["sweep", "flap.yaml", "--png", "chart.png"], alone);
    expect(stderr).toMatch(/^--png: what draws PNG is not installed here .*; write --svg, which needs no such part\n$/);
    expect([stdout, status]).toEqual(["", 2]);
    expect(runProgram(program, ["sweep", "flap.yaml", "--svg", "chart.svg"], alone).status).toBe(0);
    expect(readdirSync(alone)).not.toContain("chart.png");
  });

  it("is named in the help", () => {
    const { stdout } = run(["sweep", "--help"]);
    expect(stdout).toMatch(/--svg <file>/);
    expect(stdout).toMatch(/--png <file>/);
  });
});
