import { readdirSync, readFileSync, writeFileSync } from "node:fs";
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

  it("refuses a name that is a folder's", () => {
    const folder = newFolder();
    expect(run(["start", "new/"], folder)).toMatchObject({
      stderr: "start: new/ names a folder; name a file in it\n",
      status: 2,
    });
    expect(readdirSync(folder)).toEqual([]);
  });

  it("writes the JSON Schema beside the brief and names it in the first line, where editors look", () => {
    const folder = newFolder();
    expect(run(["start", "new.yaml", "--schema"], folder)).toMatchObject({ stdout: "", status: 0 });
    const [first, second] = readFileSync(join(folder, "new.yaml"), "utf8").split("\n");
    expect(first).toBe("# yaml-language-server: $schema=brief.schema.json");
    expect(second).toMatch(/invented/);
    expect(readFileSync(join(folder, "brief.schema.json"), "utf8")).toBe(run(["schema", "brief"]).stdout);
    expect(run(["sweep", "new.yaml"], folder)).toMatchObject({ stderr: "", status: 0 });
    expect(run(["start", "second.yaml", "--schema"], folder).status).toBe(0);
  });

  it("does not overwrite another file with the schema, and then writes no brief", () => {
    const folder = newFolder();
    writeFileSync(join(folder, "brief.schema.json"), "mine");
    const { stderr, status } = run(["start", "new.yaml", "--schema"], folder);
    expect(stderr).toMatch(/brief\.schema\.json is there already and is another; `coilsieve schema brief` prints/);
    expect(status).toBe(2);
    expect(readdirSync(folder)).toEqual(["brief.schema.json"]);
    expect(readFileSync(join(folder, "brief.schema.json"), "utf8")).toBe("mine");
  });

  it("asks for a file where it is to write the schema beside one", () => {
    expect(run(["start", "--schema"])).toMatchObject({ stderr: expect.stringMatching(/name the new brief/), status: 2 });
  });
});
