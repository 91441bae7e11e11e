import { existsSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { anchorOf } from "./anchor.ts";
import { strengthPicture } from "./strength-picture.ts";
import { filesBelow, root, textOf } from "./tree.ts";

const files = filesBelow();
const papers = files.filter((file) => file.endsWith(".md"));

function anchorsOf(file: string): readonly string[] {
  return [...textOf(file).matchAll(/^#+ (.*)$/gm)].map(([, heading]) => anchorOf(heading as string));
}

/** Links of a paper that lead nowhere in the tree. */
function deadLinks(paper: string): readonly string[] {
  const links = [...textOf(paper).matchAll(/\]\(([^)\s]+)\)/g)].map(([, link]) => link as string);
  return links
    .filter((link) => !/^[a-z]+:/.test(link))
    .filter((link) => {
      const [name = "", anchor] = link.split("#");
      const target = name === "" ? paper : path.posix.join(path.posix.dirname(paper), name);
      if (!existsSync(path.join(root, target))) return true;
      return anchor !== undefined && !anchorsOf(target).includes(anchor);
    });
}

describe.each(papers)("%s", (paper) => {
  it("has no link that leads nowhere", () => {
    expect(deadLinks(paper)).toEqual([]);
  });
});

it("the picture of strength over wire size is what the catalogs say; npm run docs draws it", async () => {
  expect(textOf("reports/pictures/strength.svg")).toBe(await strengthPicture());
});

describe("every catalog file", () => {
  it.each(files.filter((file) => /^catalogs\/.*\.(csv|yaml)$/.test(file)))("%s begins with its source", (file) => {
    const head = textOf(file).split("\n")[0] as string;
    expect(head).toMatch(/^# .{20,}/);
  });
});

describe("what is kept", () => {
  const texts = files.filter((file) => !/\.(png|ico)$/.test(file) && file !== "package-lock.json");
  // Written in parts, so that this file is no finding of its own.
  const machine = new RegExp(`(?<![\\w.*@~-])/(?:${["work", "home", "root", "Users"].join("|")})/|\\b[A-Z]:\\\\{1,2}Users`);
  const host = new RegExp(["registry\\.npm", "js\\.org|npm", "mirror|proxy\\.golang|pypi\\.", "org"].join(""));

  it("names no path of anybody's machine", () => {
    expect(texts.filter((file) => machine.test(textOf(file)))).toEqual([]);
  });

  it("names no host of a package registry", () => {
    expect([...texts, "package-lock.json"].filter((file) => host.test(textOf(file)))).toEqual([]);
  });
});
