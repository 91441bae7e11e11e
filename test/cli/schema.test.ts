import { describe, expect, it } from "vitest";
import { run } from "./run.ts";

describe("schema", () => {
  it.each(["brief", "material", "wires", "ends"])("prints the JSON Schema of %s, and nothing else", (kind) => {
    const { stdout, stderr, status } = run(["schema", kind]);
    expect(JSON.parse(stdout)).toMatchObject({ $schema: expect.stringContaining("draft-07"), description: expect.any(String) });
    expect({ stderr, status }).toEqual({ stderr: "", status: 0 });
  });

  it("names the nearest kind where there is none of that name", () => {
    expect(run(["schema", "materials"])).toMatchObject({
      stdout: "",
      stderr: expect.stringMatching(/did you mean material\?/),
      status: 2,
    });
    expect(run(["schema", "xyz"]).stderr).toMatch(/it takes brief, material, wires, ends/);
  });
});
