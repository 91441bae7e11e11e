import { shearStress, stressFactorWahl } from "../../src/mechanics/stress.ts";

/** Wire diameter, m, at which a stress is reached with the Wahl factor, the index held: stress goes with 1/d² then. */
export function wireFor(force: number, index: number, stress: number): number {
  return Math.sqrt(shearStress(force, index, 1, stressFactorWahl(index)) / stress);
}

/**
 * A material file for examples that state a shear modulus and nothing that the catalogs have.
 *
 * @param source        the book
 * @param shearModulus  with its unit
 * @param strength      the line of the file for strength, where the example bears on it
 */
export function bookMaterial(
  source: string,
  shearModulus: string,
  strength = "{ constant: 1000 MPa, diameter: { min: 0.1 mm, max: 50 mm } }",
): string {
  return `name: book-wire
source: ${source}; what is not stated there bears on no figure that is checked
moduli: { youngsModulus: 206 GPa, shearModulus: ${shearModulus} }
density: 7850 kg/m^3
strength: ${strength}
allowable: { asWound: 0.5, setRemoved: 0.5 }
relativeCost: 1
temperature: { max: 120 degC }
`;
}
