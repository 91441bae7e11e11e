import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { streamInto } from "../../src/disk/stream.ts";

/** A folder with a file that was there before. */
function folderWithFile(): { readonly folder: string; readonly file: string } {
  const folder = mkdtempSync(join(tmpdir(), "coilsieve-stream-"));
  const file = join(folder, "out");
  writeFileSync(file, "before");
  return { folder, file };
}

const long = "0123456789".repeat(30_000);

describe("a file that is streamed into", () => {
  it("stands under its name once it is finished, and as it was until then", () => {
    const { folder, file } = folderWithFile();
    const stream = streamInto(file, "--ndjson");
    stream.write(long);
    stream.write(new TextEncoder().encode("ä"));
    expect(readFileSync(file, "utf8")).toBe("before");
    stream.finish();
    expect(readFileSync(file, "utf8")).toBe(`${long}ä`);
    expect(readdirSync(folder)).toEqual(["out"]);
  });

  it("is as it was before, with nothing beside it, where it is given up", () => {
    const { folder, file } = folderWithFile();
    const stream = streamInto(file, "--ndjson");
    stream.write(long);
    stream.abandon();
    expect(readFileSync(file, "utf8")).toBe("before");
    expect(readdirSync(folder)).toEqual(["out"]);
  });

  it("stays finished where what stands beside it is given up", () => {
    const { file } = folderWithFile();
    const stream = streamInto(file, "--ndjson");
    stream.write("after");
    stream.finish();
    stream.abandon();
    expect(readFileSync(file, "utf8")).toBe("after");
  });

  it("holds the bytes of a piece as they were when it was handed over", () => {
    const { file } = folderWithFile();
    const stream = streamInto(file, "--parquet");
    const reused = new Uint8Array([65, 66]);
    stream.write(reused);
    reused.fill(0);
    stream.finish();
    expect(readFileSync(file, "utf8")).toBe("AB");
  });
});
