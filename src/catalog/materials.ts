import type { Material, MaterialClass, ModuliRow, OperationCosts } from "../model.ts";
import {
  checkRising,
  type Entry,
  entryOf,
  type Field,
  given,
  listOf,
  oneOrMore,
  openYaml,
  quantityAt,
  report,
  textAt,
  textOf,
  throwProblems,
  wordAt,
} from "./fields.ts";
import { materialClasses, materialKeys } from "./keys.ts";
import type { CatalogText } from "./source-text.ts";
import { readFatigue, readRelaxation, readStrength } from "./strength.ts";

const operationNames = ["grind", "set", "peen", "relieve"] as const;
/** 20 °C, at which moduli are stated and springs are tested, K. */
const testedAt = 293.15;

/**
 * YAML text of one material -> the material in SI. `class` may be left out only where `allowable` is stated.
 *
 * Throws a `ProblemError` with every problem of the file: `noShare` (neither class nor allowable), `moduli` (E not above G),
 * `lastRow` (an open row of moduli before the last), `nothingLeft` (a loss that takes all of the moduli), `tooCold`
 * (a highest temperature not above 20 °C), those of the strength and those of the fields.
 *
 * @param catalog  the file's text and name
 */
export function readMaterial(catalog: CatalogText): Material {
  const entry = entryOf(openYaml(catalog, materialKeys));
  const { fields } = entry;
  const [moduli, strength, temperature] = ["moduli", "strength", "temperature"].map((key) => fields.get(key));
  if (!fields.has("class") && !fields.has("allowable")) {
    report(
      entry,
      "noShare",
      "neither class nor allowable came",
      `write class (${materialClasses.join(" | ")}) or the shares allowed`,
    );
  }
  const highest = temperature === undefined ? Number.NaN : readHighest(entryOf(temperature));
  const material: Material = {
    name: textAt(entry, "name"),
    source: textAt(entry, "source"),
    ...given(entry, "class", () => wordAt<MaterialClass>(entry, "class")),
    density: quantityAt(entry, "density"),
    moduli: moduli === undefined ? [] : readModuli(moduli),
    ...given(entry, "modulusLoss", (field) => readModulusLoss(field, highest)),
    strength: strength === undefined ? {} : readStrength(strength),
    ...given(entry, "allowable", readAllowable),
    ...given(entry, "wireTolerance", readWireTolerance),
    temperature: { max: highest },
    relativeCost: quantityAt(entry, "relativeCost"),
    ...given(entry, "series", (field) => listOf(field, "write a list of series: [en-10270]").map(textOf)),
    notes: [],
    ...given(entry, "notes", (field) => listOf(field, "write a list of sentences").map(textOf)),
    ...given(entry, "fatigue", readFatigue),
    ...given(entry, "relaxation", readRelaxation),
    ...given(entry, "operations", readOperations),
  };
  throwProblems(entry.sheet);
  return material;
}

/** The highest temperature in service, K. */
function readHighest(entry: Entry): number {
  const highest = quantityAt(entry, "max");
  const field = entry.fields.get("max");
  if (field !== undefined && highest <= testedAt) {
    const got = `${textOf(field)} is not above 20 degC, at which springs are tested`;
    report(field, "tooCold", got, "write the highest in service");
  }
  return highest;
}

/** One pair for all sizes, or rows that each apply up to and including a diameter. */
function readModuli(field: Field): ModuliRow[] {
  const rows = oneOrMore(field).map((row) => entryOf(row));
  if (rows.length === 0) report(field, "noRows", "no row came", "write { youngsModulus: 206 GPa, shearModulus: 81.5 GPa }");
  const moduli = rows.map((row, i) => {
    const [youngsModulus, shearModulus] = [quantityAt(row, "youngsModulus"), quantityAt(row, "shearModulus")];
    if (youngsModulus <= shearModulus) {
      report(row, "moduli", "youngsModulus is not above shearModulus", "Young's modulus is the larger (swapped?)");
    }
    if (row.fields.has("upTo")) return { upTo: quantityAt(row, "upTo"), youngsModulus, shearModulus };
    if (i < rows.length - 1) report(row, "lastRow", "upTo is missing", "only the last row may be without an upper diameter");
    return { youngsModulus, shearModulus };
  });
  checkRising(
    rows,
    moduli.map((row) => row.upTo ?? Number.POSITIVE_INFINITY),
    "upTo",
  );
  return moduli;
}

/** What of the moduli goes for each kelvin, which must leave something of them at the highest temperature, K. */
function readModulusLoss(field: Field, highest: number): NonNullable<Material["modulusLoss"]> {
  const entry = entryOf(field);
  const perKelvin = quantityAt(entry, "perKelvin");
  const perKelvinField = entry.fields.get("perKelvin");
  if (perKelvinField !== undefined && perKelvin * (highest - testedAt) >= 1) {
    const want = "write the share that goes for each kelvin, such as 0.25e-3";
    report(perKelvinField, "nothingLeft", "nothing of the moduli is left at temperature.max", want);
  }
  return { perKelvin, source: textAt(entry, "source") };
}

function readAllowable(field: Field): NonNullable<Material["allowable"]> {
  const entry = entryOf(field);
  return { asWound: quantityAt(entry, "asWound"), setRemoved: quantityAt(entry, "setRemoved") };
}

function readWireTolerance(field: Field): NonNullable<Material["wireTolerance"]> {
  const rows = listOf(field, "write rows as { upTo: 2 mm, plusMinus: 0.02 mm }").map((row) => entryOf(row));
  const tolerances = rows.map((row) => ({
    upTo: quantityAt(row, "upTo"),
    plusMinus: quantityAt(row, "plusMinus"),
  }));
  checkRising(
    rows,
    tolerances.map((row) => row.upTo),
    "upTo",
  );
  return tolerances;
}

/** Weights of operations in the cost proxy; those left out weigh nothing. */
function readOperations(field: Field): Partial<OperationCosts> {
  const entry = entryOf(field);
  const weights = operationNames.filter((name) => entry.fields.has(name));
  return Object.fromEntries(weights.map((name) => [name, quantityAt(entry, name)]));
}
