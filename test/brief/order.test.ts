import { describe, expect, it } from "vitest";
import { writeBrief } from "../../src/brief/write.ts";
import { describeProblems } from "./problem-cases.ts";
import { briefText, read } from "./reading.ts";

/** A brief with this order, on the line of its rank. */
const withOrder = (order: string) => briefText({ rank: `order: ${order}` });

describe("an order", () => {
  const full =
    "{ hand: left, governing: inside, free: [turns, wire], quantity: 500, finish: oiled, drawing: A-1042, notes: 'two: bags' }";

  it("is read key by key", () => {
    expect(read(withOrder(full)).order).toEqual({
      hand: "left",
      governing: "inside",
      free: ["turns", "wire"],
      quantity: 500,
      finish: "oiled",
      drawing: "A-1042",
      notes: "two: bags",
    });
  });

  it("holds nothing that it does not say", () => {
    const silent = read(briefText({}));
    expect(silent.order).toBeUndefined();
    const brief = read(withOrder("{ hand: right }"));
    expect(brief.order).toEqual({ hand: "right" });
    expect(brief.defaults).toEqual(silent.defaults);
  });

  it("takes a single free parameter without brackets", () => {
    expect(read(withOrder("{ free: free length }")).order?.free).toEqual(["free length"]);
  });

  it("keeps text as it was typed, markup and words of YAML included", () => {
    expect(read(withOrder("{ finish: 'no <b>', drawing: 007, notes: null }")).order).toEqual({
      finish: "no <b>",
      drawing: "007",
      notes: "null",
    });
  });

  it("that is written reads back as the same brief", () => {
    const brief = read(withOrder(full));
    expect(read(writeBrief(brief))).toEqual(brief);
  });
});

describeProblems("the order", [
  ["an order that is no section", { rank: "order: right" }, "wrongKind", "order", /hand, governing, free/],
  ["an unknown key", { rank: "order: { colour: red }" }, "unknownKey", "order.colour", /known here: hand/],
  ["an unknown hand", { rank: "order: { hand: rihgt }" }, "unknownWord", "order.hand", /did you mean right\?/],
  ["an unknown free parameter", { rank: "order: { free: [turn] }" }, "unknownWord", "order.free", /did you mean turns\?/],
  ["a free parameter twice", { rank: "order: { free: [wire, wire] }" }, "twice", "order.free", /once/],
  ["no springs", { rank: "order: { quantity: 0 }" }, "range", "order.quantity", /above zero/],
  ["half a spring", { rank: "order: { quantity: 0.5 }" }, "notWhole", "order.quantity", /how many springs/],
  ["an empty text", { rank: "order: { finish: }" }, "empty", "order.finish", /such as oiled/],
  ["more notes than a page holds", { rank: `order: { notes: ${"x".repeat(201)} }` }, "tooLong", "order.notes", /at most 200/],
]);
