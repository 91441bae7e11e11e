import { omitUndefined } from "../../document/omit-undefined.ts";
import type { EndStyle, GivenDesign, Lookup, Material, Wire } from "../../model.ts";
import { nearestNames, quoted } from "../../problem.ts";
import { findNamed, withOwnMaterials } from "../catalog-entries.ts";
import { exactQuantity } from "../quantities.ts";
import type { Section } from "../section.ts";

const diameters = ["outsideDiameter", "insideDiameter", "meanDiameter"] as const;

/** A size in a series: the series' name, or the path of its file, then the label. */
const sizeOfSeries = /^(.*\.csv|\S+)\s+(\S.*)$/;

/**
 * The section `design` -> the data of one existing or quoted spring, SI; undefined where something in it is wrong, is missing, or
 * could not be wound. Whether data beyond need agree with the rest is not judged here.
 */
export function readDesign(design: Section, lookup: Lookup): GivenDesign | undefined {
  const hasWire = design.require("wire");
  const material = findOne(design, "material", lookup.material);
  const wire = hasWire ? readWire(design, lookup, material) : undefined;
  const ends = findOne(design, "ends", lookup.ends);
  const given = omitUndefined<Omit<GivenDesign, "wire" | "material" | "ends">>({
    outsideDiameter: exactQuantity(design, "outsideDiameter"),
    insideDiameter: exactQuantity(design, "insideDiameter"),
    meanDiameter: exactQuantity(design, "meanDiameter"),
    totalTurns: exactQuantity(design, "totalTurns"),
    activeTurns: exactQuantity(design, "activeTurns"),
    freeLength: exactQuantity(design, "freeLength"),
    rate: exactQuantity(design, "rate"),
  });
  const enough = checkEnough(design);
  if (!enough || !wire || !material || !ends) return undefined;
  checkHole(design, wire, given);
  checkActive(design, ends, given);
  return { material, wire, ends, ...given };
}

function findOne<Thing extends { readonly name: string }>(
  design: Section,
  key: string,
  find: (name: string, from: string) => Thing,
): Thing | undefined {
  const name = design.require(key) ? design.scalar(key) : undefined;
  return name === undefined ? undefined : findNamed(design, key, { name, line: design.lineOf(key) }, find);
}

function readWire(design: Section, lookup: Lookup, material: Material | undefined): Wire | undefined {
  const text = design.scalar("wire");
  if (text === undefined) return undefined;
  if (/^[-+.]?\d/.test(text)) {
    const diameter = exactQuantity(design, "wire");
    return diameter === undefined ? undefined : { label: text, diameter, series: "as given" };
  }
  const [, name, label] = sizeOfSeries.exec(text) ?? [];
  if (name === undefined || label === undefined) {
    return design.problem(
      "wire",
      "noSize",
      `${quoted(text)} names no size`,
      `write ${quoted(text)} and a label, or a diameter such as 1.2 mm`,
    );
  }
  const found = findNamed(design, "wire", { name, line: design.lineOf("wire") }, lookup.series);
  const series = found && withOwnMaterials(found, material === undefined ? [] : [material]);
  const wire = series?.wires.find((one) => one.label === label);
  if (series === undefined || wire !== undefined) return wire && { ...wire, series: series?.path ?? wire.series };
  const labels = series.wires.map((one) => one.label);
  const [nearest] = nearestNames(label, labels);
  const want = nearest === undefined ? `it has ${labels[0]} to ${labels.at(-1)}` : `nearest is ${nearest}`;
  return design.problem("wire", "unknownSize", `no size "${quoted(label)}" in ${series.name}`, want);
}

/** Notes what is missing to settle a spring; true where nothing is. */
function checkEnough(design: Section): boolean {
  const hasDiameter = diameters.some((name) => design.has(name));
  const hasTurns = design.has("totalTurns") || design.has("activeTurns") || design.has("rate");
  if (!hasDiameter) design.problem("", "missing", "gives no diameter of the coil", `write one of ${diameters.join(", ")}`);
  if (!hasTurns) {
    design.problem(
      "",
      "missing",
      "gives neither turns nor rate",
      "write totalTurns or activeTurns, or the rate they follow from",
    );
  }
  return hasDiameter && hasTurns;
}

/** Notes a coil that is no wider than its own wire leaves room for. */
function checkHole(design: Section, { diameter }: Wire, given: Partial<Record<(typeof diameters)[number], number>>): void {
  const least = { outsideDiameter: 2 * diameter, insideDiameter: 0, meanDiameter: diameter };
  for (const name of diameters) {
    if ((given[name] ?? Number.POSITIVE_INFINITY) > least[name]) continue;
    const wires = name === "meanDiameter" ? "the wire" : "twice the wire";
    design.problem(
      name,
      "noHole",
      `${design.scalar(name)} is not above ${wires}`,
      "a coil has a hole in it; is it another diameter?",
    );
  }
}

function checkActive(design: Section, { name, deadTurns }: EndStyle, { totalTurns }: { readonly totalTurns?: number }): void {
  if (totalTurns === undefined || totalTurns > deadTurns) return;
  const got = `${design.scalar("totalTurns")} leave none active, for ${name} ends take ${deadTurns}`;
  design.problem("totalTurns", "noActiveTurns", got, "write more turns, or activeTurns if these are those");
}
