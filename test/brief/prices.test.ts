import { describe, expect, it } from "vitest";
import { readBrief } from "../../src/brief/read.ts";
import { lookupOn } from "../../src/catalog/find.ts";
import { readShelf } from "../../src/disk/files.ts";
import { ProblemError } from "../../src/problem.ts";

const stocks: Readonly<Record<string, string>> = {
  "./a.csv": "# prices in: crowns\nlabel,diameter,price\nA,1.6 mm,4 / kg\n",
  "./b.csv": "# prices in: crowns\nlabel,diameter,price\nB,2 mm,2 / lb\n",
  "./marks.csv": "# prices in: marks\nlabel,diameter,price\nC,2 mm,3 / kg\n",
  "./silent.csv": "label,diameter,price\nC,2 mm,3 / kg\n",
};
const lookup = lookupOn(readShelf(), (path) => ({ file: path, text: stocks[path] ?? "" }));

/** Reads a brief with these wires on its fourth line. */
function readWith(wires: string) {
  const sweep = `sweep:\n  wires: [${wires}]\n  materials: [astm-a228]\n  ends: [squared-ground]\n`;
  return readBrief(`practice: handbook\nload: { force: 20 N, deflection: 10 mm }\n${sweep}`, "brief.yaml", lookup);
}

function problemsOf(wires: string): string {
  try {
    readWith(wires);
  } catch (error) {
    if (error instanceof ProblemError) return error.message;
    throw error;
  }
  return "";
}

describe("prices of several stocks", () => {
  it("stand together in one currency", () => {
    expect(readWith("./a.csv, ./b.csv").sweep.wires.map(({ currency }) => currency)).toEqual(["crowns", "crowns"]);
  });

  it.each([
    [
      "./a.csv, iso-r20",
      "./a.csv has prices and iso-r20 has none, so costs do not compare; give every series prices, or leave the column price out",
    ],
    [
      "./a.csv, ./b.csv, ./marks.csv",
      "./a.csv is in crowns and ./marks.csv in marks, so costs do not compare; give all prices in one currency, named by a line # prices in: …",
    ],
    [
      "./silent.csv, ./a.csv",
      "./silent.csv is in no currency that is named and ./a.csv in crowns, so costs do not compare; give all prices in one currency, named by a line # prices in: …",
    ],
  ])("are a problem where they do not compare: %s", (wires, sentence) => {
    expect(problemsOf(wires)).toBe(`brief.yaml:4 sweep.wires: ${sentence}`);
  });
});
