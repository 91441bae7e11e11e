import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { newFolder, run } from "./run.ts";

describe("start", () => {
  it("writes a brief of which something fits", () => {
    const folder = newFolder();
    expect(run(["start", "new.yaml"], folder)).toMatchObject({ stdout: "", status: 0 });
    expect(run(["sweep", "new.yaml"], folder)).toMatchObject({ stderr: "", status: 0 });
  });

  it("prints the same brief where no file is named", () => {
    const folder = newFolder();
    run(["start", "new.yaml"], folder);
    expect(run(["start"], folder).stdout).toBe(readFileSync(join(folder, "new.yaml"), "utf8"));
  });

  it("does not overwrite a file", () => {
    const folder = newFolder();
    writeFileSync(join(folder, "mine.yaml"), "mine");
    const { stderr, status } = run(["start", "mine.yaml"], folder);
    expect(stderr).toMatch(/mine\.yaml is there already; name a new file/);
    expect(status).toBe(2);
    expect(readFileSync(join(folder, "mine.yaml"), "utf8")).toBe("mine");
  });
});
