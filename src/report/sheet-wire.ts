import type { Brief, Design, Material } from "../model.ts";
import { show } from "../units/show.ts";
import { fieldList, sheetPart } from "./sheet-fields.ts";

/**
 * Which wire, by which standard, with which strength.
 *
 * @param brief     the brief that the spring answers
 * @param design    the spring
 * @param material  of its wire
 * @returns markup
 */
export function wirePart({ units }: Brief, design: Design, material: Material): string {
  const stress = (value: number) => show(value, "stress", units);
  return sheetPart(
    "wire",
    "Wire",
    fieldList([
      { label: "Material", text: material.name, note: material.source },
      { label: "Size", text: show(design.wireDiameter, "length", units), note: sizeNote(design, material) },
      { label: "Strength", text: stress(design.tensileStrength), note: design.strengthBasis },
      { label: "Shear modulus", text: stress(design.shearModulus) },
      {
        label: "Mass, length",
        text: `${show(design.mass, "mass", units)}, ${show(design.wireLength, "length", units)}`,
        note: "of wire, one spring",
      },
    ]),
  );
}

/** The size as it is sold, and by whose word its tolerance stands. */
function sizeNote({ wire, series, tolerance: { wireSource } }: Design, { source }: Material): string {
  const sold = `${wire} of ${series}`;
  if (wireSource === null) return sold;
  return `${sold}; tolerance by ${wireSource === source ? "the material's standard" : wireSource}`;
}
