import { describe, expect, it } from "vitest";
import { wrap } from "../../../src/report/text/layout.ts";

describe("a paragraph", () => {
  it("breaks at spaces, indents what follows and cuts only a word longer than a line", () => {
    expect(wrap("one two three", 8, 2)).toEqual(["one two", "  three"]);
    expect(wrap("abcdefghij", 4, 0)).toEqual(["abcd", "efgh", "ij"]);
  });
});
