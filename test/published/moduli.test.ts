import { describe, expect, it } from "vitest";
import { shipped } from "../catalog/shipped.ts";

const inch = 0.0254;
const megapsi = (1e6 * 4.4482216152605) / inch ** 2;

/** E and G of a size, Mpsi: a row applies up to and including its upper diameter. */
function moduliOf(material: string, diameterInch: number): [string, string] {
  const row = shipped
    .material(material, "")
    .moduli.find(({ upTo }) => upTo === undefined || diameterInch * inch <= upTo * (1 + 1e-9));
  return [((row?.youngsModulus ?? 0) / megapsi).toFixed(2), ((row?.shearModulus ?? 0) / megapsi).toFixed(2)];
}

// Shigley, Mechanical Engineering Design, 8th edition and later, Table 10-5: E and G in Mpsi by diameter in inches. Between
// .032 and .033 and between .063 and .064 the table is silent; Example 10-2 takes 11.85 at .063.
describe("moduli of Shigley Table 10-5", () => {
  it.each([
    ["astm-a228", 0.02, "29.50", "12.00"],
    ["astm-a228", 0.032, "29.50", "12.00"],
    ["astm-a228", 0.033, "29.00", "11.85"],
    ["astm-a228", 0.063, "29.00", "11.85"],
    ["astm-a228", 0.064, "28.50", "11.75"],
    ["astm-a228", 0.125, "28.50", "11.75"],
    ["astm-a228", 0.126, "28.00", "11.60"],
    ["astm-a227", 0.02, "28.80", "11.70"],
    ["astm-a227", 0.032, "28.80", "11.70"],
    ["astm-a227", 0.033, "28.70", "11.60"],
    ["astm-a227", 0.063, "28.70", "11.60"],
    ["astm-a227", 0.064, "28.60", "11.50"],
    ["astm-a227", 0.125, "28.60", "11.50"],
    ["astm-a227", 0.126, "28.50", "11.40"],
    ["astm-a229", 0.1, "28.50", "11.20"],
    ["astm-a232", 0.1, "29.50", "11.20"],
    ["astm-a401", 0.1, "29.50", "11.20"],
    ["astm-a313-302", 0.05, "28.00", "10.00"],
    ["astm-b159", 0.05, "15.00", "6.00"],
  ])("%s at %d in: E %s, G %s Mpsi", (material, diameter, youngs, shear) => {
    expect(moduliOf(material, diameter)).toEqual([youngs, shear]);
  });
});

// Wire makers' pages for EN 10270-1: E 206 GPa, G 81.5 GPa, 7.85 kg/dm³, all grades.
describe.each(["en-sl", "en-sm", "en-sh", "en-dm", "en-dh"])("moduli and density of EN 10270-1, %s", (material) => {
  it("E 206 GPa, G 81.5 GPa, 7.85 kg/dm³", () => {
    const { moduli, density } = shipped.material(material, "");
    expect(moduli.map(({ youngsModulus, shearModulus }) => [youngsModulus / 1e9, shearModulus / 1e9])).toEqual([[206, 81.5]]);
    expect(density).toBeCloseTo(7850, 9);
  });
});

// EN 13906-1 clause 6.4, from memory: r = 0.25e-3 for steel, 0.40e-3 for steels of EN 10270-3. Associated Spring, Design Handbook:
// about 2 % for each 55 °C of spring steel, which is 0.36e-3. The two disagree by 1.4 for carbon steel.
describe("loss of the moduli for each kelvin", () => {
  it.each([
    ["en-sm en-sh en-sl en-dm en-dh en-fdc en-fdsicr en-vdsicr en-vdsicrv", 0.25e-3, "EN 13906-1 clause 6.4"],
    ["en-1.4310-ns en-1.4310-hs en-1.4401 en-1.4568 en-1.4568-aged", 0.4e-3, "EN 13906-1 clause 6.4"],
    ["astm-a313-302 astm-a313-631 jis-wpa jis-wpb jis-wpc", 0.4e-3, "EN 13906-1 clause 6.4"],
    ["astm-a227 astm-a228 astm-a229 astm-a231 astm-a232 astm-a401", 0.36e-3, "Associated Spring"],
    ["jis-sw-a jis-sw-b jis-sw-c gb-fdc gb-fdcrv-a gb-fdcrv-b gb-fdsimn gb-fdcrsi", 0.36e-3, "Associated Spring"],
  ])("%s: %d, with its source", (materials, perKelvin, source) => {
    for (const name of materials.split(" ")) {
      const { modulusLoss } = shipped.material(name, "");
      expect(modulusLoss?.perKelvin).toBe(perKelvin);
      expect(modulusLoss?.source).toContain(source);
      expect(modulusLoss?.source.includes("from memory")).toBe(source.startsWith("EN"));
    }
  });

  it("none is at hand for brass, bronze and beryllium copper", () => {
    for (const name of ["astm-b159", "astm-b197-th04", "en-cusn6-half-hard", "en-cuzn37-spring-hard"]) {
      expect(shipped.material(name, "").modulusLoss).toBeUndefined();
    }
  });
});

// Wire merchants' lists, lb/in³, to the printed digits.
describe("densities in print", () => {
  it.each([
    ["astm-a228", "0.284"],
    ["astm-a227", "0.284"],
    ["astm-a229", "0.284"],
    ["astm-a232", "0.284"],
    ["astm-a401", "0.284"],
    ["astm-a313-302", "0.286"],
    ["astm-b159", "0.320"],
  ])("%s: %s lb/in³", (material, printed) => {
    expect((shipped.material(material, "").density / (0.45359237 / inch ** 3)).toFixed(3)).toBe(printed);
  });
});
