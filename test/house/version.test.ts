import { expect, it } from "vitest";
import { VERSION } from "../../src/version.ts";
import { textOf } from "./tree.ts";

it("the version in the source is that of the package", () => {
  expect((JSON.parse(textOf("package.json")) as { version: string }).version).toBe(VERSION);
});
