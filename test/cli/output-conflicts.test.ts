import { linkSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { fits, newFolder, run } from "./run.ts";

const stock = "label,diameter\nA1,1.6 mm\nA2,1.8 mm\nA3,2 mm\n";
const ofStock = fits.replace("[iso-r20]", "[./stock.csv]");

function folderWith(): string {
  const folder = newFolder();
  writeFileSync(join(folder, "flap.yaml"), ofStock);
  writeFileSync(join(folder, "stock.csv"), stock);
  symlinkSync("flap.yaml", join(folder, "link.yaml"));
  linkSync(join(folder, "flap.yaml"), join(folder, "twin.yaml"));
  mkdirSync(join(folder, "sub"));
  return folder;
}

describe("an output", () => {
  it.each([
    [
      "that another one names",
      ["--csv", "a.out", "--json", "a.out"],
      /^--json: a\.out is what --csv writes too; name another file\n$/,
    ],
    ["that another one names by another way", ["--html", "a.out", "--svg", "sub/../a.out"], /^--svg: .*--html writes too/],
    ["that is the brief", ["--csv", "flap.yaml"], /^--csv: flap\.yaml is read for this and would be lost; name another file\n$/],
    ["that is the brief by another way", ["--json", "./sub/../flap.yaml"], /^--json: .* is read for this/],
    ["that is a link to the brief", ["--sheet", "link.yaml"], /^--sheet: link\.yaml is read for this/],
    ["that is the brief under a second name", ["--drawing", "twin.yaml"], /^--drawing: twin\.yaml is read for this/],
    ["that is stock which the brief names", ["--csv", "stock.csv"], /^--csv: stock\.csv is read for this/],
  ])("%s is refused with 2, and every file stays as it was", (_title, args, message) => {
    const folder = folderWith();
    const before = readdirSync(folder);
    const { stdout, stderr, status } = run(["sweep", "flap.yaml", ...args], folder);
    expect(stderr).toMatch(message);
    expect([stdout, status]).toEqual(["", 2]);
    expect(readdirSync(folder)).toEqual(before);
    expect(readFileSync(join(folder, "flap.yaml"), "utf8")).toBe(ofStock);
    expect(readFileSync(join(folder, "stock.csv"), "utf8")).toBe(stock);
  });

  it("is told of with every other one that clashes", () => {
    const { stderr } = run(["sweep", "flap.yaml", "--csv", "flap.yaml", "--html", "a", "--json", "a"], folderWith());
    expect(stderr.trimEnd().split("\n")).toHaveLength(2);
  });

  it.each([
    ["check", ["--json", "quoted.yaml"]],
    ["check", ["--sheet", "a.out", "--worked", "a.out.html", "--drawing", "a.out"]],
    ["relax", ["--json", "quoted.yaml"]],
  ])("of %s clashes alike: %s", (command, args) => {
    const folder = newFolder();
    writeFileSync(join(folder, "flap.yaml"), fits);
    const pinned = command === "check" ? run(["sweep", "flap.yaml", "--pin", "1"], folder).stdout : fits;
    writeFileSync(join(folder, "quoted.yaml"), pinned);
    const { stderr, status } = run([command, "quoted.yaml", ...args], folder);
    expect(stderr).toMatch(/name another file\n$/);
    expect(status).toBe(2);
    expect(readFileSync(join(folder, "quoted.yaml"), "utf8")).toBe(pinned);
  });

  it("may be a device that another one names too", () => {
    expect(run(["sweep", "flap.yaml", "--csv", "/dev/null", "--json", "/dev/null"], folderWith()).status).toBe(0);
  });
});
