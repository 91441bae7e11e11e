import { describe, expect, it } from "vitest";
import { largestCatalog } from "../../src/catalog/source-text.ts";
import { readWireSeries } from "../../src/catalog/wires.ts";
import { ProblemError } from "../../src/problem.ts";

function read(text: string) {
  return readWireSeries({ file: "stock.csv", text }, "stock");
}

function problemsOf(text: string): string[] {
  try {
    read(text);
  } catch (error) {
    if (error instanceof ProblemError) return error.message.split("\n");
    throw error;
  }
  return [];
}

describe("a wire series", () => {
  it("comes in SI, rising in diameter, with its head as its source", () => {
    const series = read("# Shop list, 2026\n# counted by hand\nlabel,diameter\nB,2 mm\nA,0.05 in\n");
    expect(series.source).toBe("Shop list, 2026 counted by hand");
    expect(series.wires).toEqual([
      { label: "A", diameter: 0.00127, series: "stock" },
      { label: "B", diameter: 0.002, series: "stock" },
    ]);
  });

  it("says so where it states no source", () => {
    expect(read("label,diameter\nA,1 mm").source).toBe("no source stated");
  });

  it("is sold in the materials of its head, a row's own coming first", () => {
    const { wires } = read(
      "# list\n# sold in: astm-a228, en-sh\nlabel,diameter,materials\nA,1 mm,\nB,2 mm,en-dh; en-sm\nC,3 mm,x y\n",
    );
    expect(wires.map(({ soldIn }) => soldIn)).toEqual([
      ["astm-a228", "en-sh"],
      ["en-dh", "en-sm"],
      ["x", "y"],
    ]);
  });

  it("takes prices for a mass, in the currency that its head names", () => {
    const { wires, currency, source } = read(
      "# Our rack\n# Prices in: crowns\nlabel,diameter,price\nA,1 mm,4.2 / kg\nB,2 mm,1 / lb\n",
    );
    expect(wires.map(({ price }) => price)).toEqual([4.2, 1 / 0.45359237]);
    expect({ currency, source }).toEqual({ currency: "crowns", source: "Our rack" });
  });

  it("reads as a spreadsheet saves it: byte order mark, carriage returns, quotes, empty lines", () => {
    const { source, wires } = read('\uFEFF# list\r\n"label","diameter"\r\n"A, soft","1 mm"\r\n\r\nB,2 mm\r\n,\r\n');
    expect(source).toBe("list");
    expect(wires.map(({ label }) => label)).toEqual(["A, soft", "B"]);
  });
});

describe("what is wrong with a wire series is said by file, line and column, all at once", () => {
  it("in its rows", () => {
    const text = "# list\nlabel,diameter\nA,1\nB,-2 mm\nA,2 lb\nC,0 mm\n,3 mm\nD\nE,4 mm,5\n";
    expect(problemsOf(text)).toEqual([
      "stock.csv:3 diameter: 1 has no unit; write 1 mm (or in)",
      "stock.csv:4 diameter: -2 mm is not above zero; write a diameter above zero",
      "stock.csv:5 diameter: 2 lb is a mass; a length is wanted, such as 12 mm",
      'stock.csv:5 label: "A" stands in line 3 too; give each wire its own',
      "stock.csv:6 diameter: 0 mm is not above zero; write a diameter above zero",
      "stock.csv:7 label: nothing came; write the name it is ordered by",
      "stock.csv:8 row: 1 cell came, where the header has 2; write label,diameter, and a text with a comma in quotes",
      "stock.csv:9 row: 3 cells came, where the header has 2; write label,diameter, and a text with a comma in quotes",
    ]);
  });

  it("on the right line after a cell that holds line ends", () => {
    expect(problemsOf('label,diameter\n"A\nsoft",1 mm\nB,2\n')).toEqual([
      "stock.csv:4 diameter: 2 has no unit; write 2 mm (or in)",
    ]);
  });

  it("in a price that some rows lack", () => {
    expect(problemsOf("label,diameter,price\nA,1 mm,4 / kg\nB,2 mm,\n")).toEqual([
      "stock.csv:3 price: nothing came, though other wires have prices; write a price for every wire, such as 4.2 / kg, or leave the column out",
    ]);
  });

  it.each([
    ["in words", "four crowns", '"four crowns" does not begin with a number; a price for a mass is wanted, such as 4.2 / kg'],
    ["with its currency", "4 crowns / kg", "4 crowns / kg is not a price for a mass; such as 4 / kg, or 4 / lb"],
    ["without a mass", "4.2", "4.2 has no unit; write 4.2 / kg (or / lb)"],
    ["below zero", "-4 / kg", "-4 / kg is not above zero; write a price above zero"],
    ["of nothing", "0 / kg", "0 / kg is not above zero; write a price above zero"],
    ["with a decimal comma, in quotes", '"4,2 / kg"', "4,2 / kg has a comma in its number; write 4.2 / kg"],
  ])("in a price %s", (_, price, sentence) => {
    expect(problemsOf(`label,diameter,price\nA,1 mm,${price}\n`)).toEqual([`stock.csv:2 price: ${sentence}`]);
  });

  it("in a decimal comma, which parts a cell", () => {
    expect(problemsOf("label,diameter,price\n7,0,7 mm,4.2 / kg\nB,1 mm,4,2 / kg\n")).toEqual([
      "stock.csv:2 row: 4 cells came, where the header has 3: 0,7 mm has a comma; write 0.7 mm",
      "stock.csv:3 row: 4 cells came, where the header has 3: 4,2 / kg has a comma; write 4.2 / kg",
    ]);
  });

  it("in a size that stands twice for one material, and not in one that is drawn in two", () => {
    const head = "label,diameter,materials\n";
    const sentence =
      "1 mm stands in line 2 too, for the same material; keep one of them, or say under materials which is drawn in which";
    expect(problemsOf(`${head}A,1 mm,en-sm\nB,0.001 m,en-sh\nC,1 mm,en-sh en-sm\n`)).toEqual([
      `stock.csv:4 diameter: ${sentence}`,
    ]);
    expect(problemsOf(`${head}A,1 mm,\nB,1 mm,en-sh\n`)).toEqual([`stock.csv:3 diameter: ${sentence}`]);
    expect(problemsOf(`${head}A,1 mm,en-sm\nB,1 mm,en-sh\n`)).toEqual([]);
  });

  it("in the name of its currency", () => {
    expect(problemsOf("# prices in: crowns\nlabel,diameter\nA,1 mm\n")).toEqual([
      "stock.csv:1 prices in: crowns came, but there is no column price; add the column, or leave the line out",
    ]);
    expect(problemsOf(`# prices in: ${"x".repeat(13)}\nlabel,diameter,price\nA,1 mm,1 / kg\n`)).toEqual([
      "stock.csv:1 prices in: 13 characters came; write a short name, such as EUR, of 12 at most",
    ]);
  });

  it.each([
    [
      "label,diametr\nA,1 mm\n",
      ['no column "diametr"; nearest is diameter', "column diameter is missing; begin the table with label,diameter"],
    ],
    ["label,diameter,label\nA,1 mm,B\n", ['column "label" comes twice; keep one']],
    ["label,diameter,__proto__\nA,1 mm,B\n", ['no column "__proto__"; the columns are label,diameter,price,materials']],
    ["label,diameter\n", ["no row follows it; write one row for each wire"]],
    ["", ["nothing came; begin the table with a row label,diameter or label,diameter,price,materials"]],
    [
      "A7,0.7 mm,4.2 / kg\nA9,0.9 mm,4.1 / kg\n",
      [
        "the first row is A7,0.7 mm,4.2 / kg, which names no column; begin the table with a row label,diameter or label,diameter,price,materials",
      ],
    ],
    ["label;diameter\nA;1 mm\n", ["cells are parted by semicolons; part them by commas, and write decimals with a point"]],
    ["label\tdiameter\nA\t1 mm\n", ["cells are parted by tabs; part them by commas, and write decimals with a point"]],
  ])("in its header: %j", (text, sentences) => {
    expect(problemsOf(text)).toEqual(sentences.map((sentence) => `stock.csv:1 header: ${sentence}`));
  });

  it("in its size", () => {
    expect(problemsOf("x".repeat(largestCatalog + 1))).toEqual([
      "stock.csv file: 2000001 characters came; a catalog has at most 2000000",
    ]);
  });
});
