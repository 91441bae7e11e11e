import { describe, expect, it } from "vitest";
import { wirePropertiesAt } from "../../src/constrain/candidate/wire-properties.ts";
import { strengthInterpolated, strengthNextRow, strengthPowerLaw } from "../../src/mechanics/strength.ts";
import { shipped } from "../catalog/shipped.ts";

const inch = 0.0254;
const ksi = (1000 * 4.4482216152605) / inch ** 2;

/** `.004=439 .005=426` -> pairs of diameter and strength as printed. */
function printed(text: string): [number, number][] {
  return text
    .trim()
    .split(/\s+/)
    .map((pair) => pair.split("=").map(Number) as [number, number]);
}

/** The minimum that the catalog gives a diameter, read as its table says, Pa. */
function minimumOf(material: string, diameter: number): number {
  const table = shipped.material(material, "").strength.minimum;
  if (table === undefined) throw new Error(`${material} has no rows`);
  const read = table.between === "interpolate" ? strengthInterpolated : strengthNextRow;
  return read(
    table.rows.map((row) => row.diameter),
    table.rows.map((row) => row.strength),
    diameter,
  );
}

/** What the catalog's fit gives a diameter, Pa. */
function fitOf(material: string, diameter: number): number {
  const piece = shipped.material(material, "").strength.fit?.find(({ diameter: { max } }) => diameter <= max * (1 + 1e-9));
  if (piece === undefined) throw new Error(`${material} has no fit at ${diameter} m`);
  return strengthPowerLaw(piece.value, piece.at, piece.exponent, diameter);
}

/** Least and largest deviation of the fit from the printed minima within its range, in percent to one decimal. */
function deviation(material: string, rows: readonly (readonly [number, number])[]): [string, string] {
  const sizes = shipped.material(material, "").strength.fit ?? [];
  const [least, largest] = [sizes[0]?.diameter.min ?? 0, sizes.at(-1)?.diameter.max ?? 0];
  const shares = rows
    .filter(([d]) => d * inch >= least * (1 - 1e-9) && d * inch <= largest * (1 + 1e-9))
    .map(([d, strength]) => fitOf(material, d * inch) / (strength * ksi) - 1);
  return [(100 * Math.min(...shares)).toFixed(1), (100 * Math.max(...shares)).toFixed(1)];
}

// Tables as printed by wire merchants, edition not stated: diameter in inches = minimum tensile strength in ksi.
const a228 = printed(`
    .004=439 .005=426 .006=415 .007=407 .008=399 .009=393 .010=387 .011=382 .012=377 .013=373 .014=369 .015=365
    .016=362 .018=356 .020=350 .022=345 .024=341 .026=337 .028=333 .030=330 .032=327 .034=324 .036=321 .038=318
    .040=315 .042=313 .045=309 .048=306 .051=303 .055=300 .059=296 .063=293 .067=290 .072=287 .076=284 .080=282
    .085=279 .090=276 .095=274 .100=271 .102=270 .107=268 .110=267 .112=266 .121=263 .125=261 .130=259 .135=258
    .140=256 .145=254 .150=253 .156=251 .162=249 .177=245 .192=241 .207=238 .225=235 .250=230`);
const a227 = printed(`
    .020=283 .023=279 .026=275 .029=271 .032=266 .035=261 .041=255 .048=248 .054=243 .062=237 .072=232 .080=227
    .092=220 .106=216 .120=210 .135=206 .148=203 .162=200 .177=195 .192=192 .207=190 .225=186 .250=182 .312=174
    .375=167 .438=165 .500=156 .562=152 .625=147`);
const a229 = printed(`
    .020=293 .023=289 .026=286 .029=283 .032=280 .035=274 .041=266 .048=259 .054=253 .062=247 .072=241 .080=235
    .092=230 .106=225 .120=220 .135=215 .148=210 .162=205 .177=200 .192=195 .207=190 .225=188 .244=187 .250=185
    .312=183 .375=180 .438=175 .500=170 .562=165 .625=165`);
// The printed row .013 = 324 is out of sequence and not in the catalog: see below.
const a313 = printed(`
    .009=325 .010=320 .011=318 .012=316 .014=312 .015=310 .016=308 .017=306 .018=304 .020=300 .022=296 .024=292
    .026=291 .028=289 .031=285 .034=282 .037=280 .041=275 .045=272 .050=267 .054=265 .058=261 .063=258 .070=252
    .075=250 .080=246`);

describe.each([
  ["ASTM A228", "astm-a228", a228],
  ["ASTM A227 class I", "astm-a227", a227],
  ["ASTM A229 class I", "astm-a229", a229],
  ["ASTM A313 type 302 class 1", "astm-a313-302", a313],
] as const)("minimum strength by %s", (_, material, rows) => {
  it.each(rows)("%d in has %d ksi", (diameter, strength) => {
    expect((minimumOf(material, diameter * inch) / ksi).toFixed(3)).toBe(strength.toFixed(3));
  });
});

// Wire makers' pages for EN 10270-1, edition not stated: diameter in mm = minimum tensile strength in MPa.
// The printed row 15 = 1160 is out of sequence and not in the catalog: see below.
const sm = printed(`
    0.3=2370 0.4=2270 0.5=2200 0.6=2140 0.7=2090 0.8=2050 0.9=2010 1.0=1980 1.1=1950 1.2=1920 1.3=1900 1.4=1870
    1.5=1850 1.6=1830 1.7=1810 1.8=1790 1.9=1770 2.0=1760 2.1=1740 2.4=1700 2.5=1690 2.6=1670 2.8=1650 3.0=1630
    3.2=1610 3.4=1590 3.5=1580 3.6=1570 3.8=1550 4.0=1530 4.5=1500 5.0=1460 5.5=1430 6.0=1400 6.5=1380 7.0=1350
    7.5=1330 8.0=1310 8.5=1290 9.0=1270 9.5=1260 10.0=1240 10.5=1220 11=1210 12=1180 12.5=1170 13=1160 14=1130
    16=1090 17=1070 18=1050 19=1030 20=1020`);
const dh = printed(`
    .20=2800 .22=2770 .25=2720 .28=2680 .30=2660 .32=2640 .34=2610 .35=2600 .40=2560 .45=2510 .50=2480 .60=2410
    .70=2360 .80=2310 .90=2250 1.00=2230 1.10=2200 1.20=2170 1.25=2150 1.30=2140 1.40=2110 1.50=2090 1.60=2060
    1.70=2040 1.80=2020 1.90=2000 2.00=1980 2.10=1970 2.25=1940 2.40=1920 2.50=1900 2.60=1890 2.80=1860 3.00=1840
    3.20=1820 3.40=1790 3.60=1770 3.80=1750 4.00=1740`);

describe.each([
  ["SM", "en-sm", sm],
  ["DM", "en-dm", sm],
  ["DH", "en-dh", dh],
  ["SH", "en-sh", dh.filter(([diameter]) => diameter >= 0.3)],
] as const)("minimum strength by EN 10270-1, grade %s", (_, material, rows) => {
  it.each(rows)("%d mm has %d MPa", (diameter, strength) => {
    expect((minimumOf(material, diameter / 1000) / 1e6).toFixed(3)).toBe(strength.toFixed(3));
  });
});

describe("between rows", () => {
  it("ASTM A228 is linear in the logarithm: at the geometric mean of two sizes, the mean of their strengths", () => {
    expect(minimumOf("astm-a228", Math.sqrt(0.08 * 0.085) * inch) / ksi).toBeCloseTo((282 + 279) / 2, 9);
  });

  it.each([
    ["astm-a313-302", 0.065 * inch, 252 * ksi],
    ["en-sh", 0.00105, 2200e6],
    ["en-sm", 0.00205, 1740e6],
  ])("%s takes the next larger row", (material, diameter, strength) => {
    expect(minimumOf(material, diameter) / strength).toBeCloseTo(1, 12);
  });
});

describe("printed rows that are out of sequence do not count: the size takes the next larger row, on the safe side", () => {
  it.each([
    ["ASTM A313 type 302, .013 in, printed 324 ksi", "astm-a313-302", 0.013 * inch, 312 * ksi, 324 * ksi],
    ["EN 10270-1 SM, 15 mm, printed 1160 MPa", "en-sm", 0.015, 1090e6, 1160e6],
  ])("%s", (_, material, diameter, taken, print) => {
    expect(minimumOf(material, diameter) / taken).toBeCloseTo(1, 12);
    expect(minimumOf(material, diameter)).toBeLessThan(print);
  });
});

// Shigley, Mechanical Engineering Design, 8th edition and later, Table 10-4, against the tables above. A textbook's fit that
// runs above the guaranteed minimum is on the unsafe side, which is why the minimum is the default.
describe("the power laws of Shigley Table 10-4 lie off the guaranteed minimum by", () => {
  it.each([
    ["+1.1 % to +6.8 % for A228", "astm-a228", a228, "1.1", "6.8"],
    ["-1.1 % to +2.4 % for A227", "astm-a227", a227, "-1.1", "2.4"],
    ["-2.0 % to +4.3 % for A229", "astm-a229", a229, "-2.0", "4.3"],
    ["-2.3 % to +1.0 % for A313 type 302, .013 in to .080 in", "astm-a313-302", a313, "-2.3", "1.0"],
  ] as const)("%s", (_, material, rows, least, largest) => {
    expect(deviation(material, rows)).toEqual([least, largest]);
  });

  // Shigley Table 10-4 as printed, ksi·in^m and its range in inches; below the A228 to A313 rows from memory.
  it.each([
    ["astm-a228", 0, 201, 0.145, 0.004, 0.256],
    ["astm-a227", 0, 140, 0.19, 0.028, 0.5],
    ["astm-a229", 0, 147, 0.187, 0.02, 0.5],
    ["astm-a313-302", 0, 169, 0.146, 0.013, 0.1],
    ["astm-a313-302", 1, 128, 0.263, 0.1, 0.2],
    ["astm-a313-302", 2, 90, 0.478, 0.2, 0.4],
    ["astm-a401", 0, 202, 0.108, 0.063, 0.375],
    ["astm-b159", 0, 145, 0, 0.004, 0.022],
    ["astm-b159", 1, 121, 0.028, 0.022, 0.075],
    ["astm-b159", 2, 110, 0.064, 0.075, 0.3],
  ])("%s, piece %d: A %d, m %d, from %d to %d in", (material, piece, value, exponent, min, max) => {
    const fit = shipped.material(material, "").strength.fit?.[piece];
    expect(fit?.exponent).toBe(exponent);
    expect((fit?.value ?? 0) / ksi).toBeCloseTo(value, 9);
    expect((fit?.at ?? 0) / inch).toBeCloseTo(1, 12);
    expect((fit?.diameter.min ?? 0) / inch).toBeCloseTo(min, 12);
    expect((fit?.diameter.max ?? 0) / inch).toBeCloseTo(max, 12);
  });

  // The book's range begins at .032 in; below 1.4 mm the law lies above the standard's own SI rows by the shares below.
  it("A232, from memory: A 169, m 0.168, to .437 in, and from 1.4 mm only", () => {
    const [fit, ...more] = shipped.material("astm-a232", "").strength.fit ?? [];
    expect(more).toEqual([]);
    expect([(fit?.value ?? 0) / ksi, fit?.exponent, (fit?.diameter.max ?? 0) / inch]).toEqual([
      expect.closeTo(169, 9),
      0.168,
      expect.closeTo(0.437, 12),
    ]);
    expect(fit?.diameter.min).toBeCloseTo(0.0014, 12);
    const above = (d: number) => 100 * (strengthPowerLaw(2005e6, 0.001, 0.168, d) / minimumOf("astm-a232m", d) - 1);
    expect([0.0005, 0.0006, 0.0008, 0.001, 0.0016].map((d) => above(d).toFixed(1))).toEqual(["9.4", "7.6", "5.1", "3.4", "1.8"]);
  });

  // Shigley Table 10-4 prints the second range's start within 1 % of the first one's end.
  it.each([
    [0.1, 236.5, 234.5],
    [0.2, 195.5, 194.2],
  ])("a step at %d in for A313 type 302, from %d down to %d ksi", (diameter, before, after) => {
    expect((fitOf("astm-a313-302", diameter * inch) / ksi).toFixed(1)).toBe(before.toFixed(1));
    expect((fitOf("astm-a313-302", diameter * inch * (1 + 1e-6)) / ksi).toFixed(1)).toBe(after.toFixed(1));
  });
});

// Printed maxima of SM (wire makers' pages). In every row printed for both grades the least strength of SH and DH is the largest of
// SM plus 10 MPa, but for two rows that are out of sequence: the 2250 of DH at 0.90 mm and the maximum of SM at 1.0 mm, 2250.
const smMaxima = printed(`
    0.3=2650 0.4=2550 0.5=2470 0.6=2400 0.7=2350 0.8=2300 1.1=2190 1.2=2160 1.3=2130 1.4=2100 1.5=2080 1.6=2050 1.7=2030
    1.8=2010 1.9=1990 2.0=1970 2.1=1960 2.4=1910 2.5=1890 2.6=1880 2.8=1850 3.0=1830 3.2=1810 3.4=1780 3.6=1760 3.8=1740
    4.0=1730 4.5=1680 5.0=1650 5.5=1610 6.0=1580 6.5=1550 7.0=1530 7.5=1500 8.0=1480 8.5=1460 9.0=1440 9.5=1420 10.0=1400
    10.5=1380 11=1370 12=1340 12.5=1320 13=1310 14=1280 15=1260 16=1230 17=1210 18=1190 19=1170 20=1150`);

describe.each(["en-sh", "en-dh"])("%s by the rule that its printed rows obey", (material) => {
  it.each(smMaxima)("%d mm has 10 MPa more than the largest strength of SM, %d MPa", (diameter, largest) => {
    const wireProperties = wirePropertiesAt(shipped.material(material, ""), diameter / 1000, "minimum");
    expect((wireProperties?.tensileStrength ?? 0) / 1e6).toBeCloseTo(largest + 10, 6);
    expect(wireProperties?.strengthBasis).toBe(diameter > 4 ? "minimum, inferred" : "minimum");
  });

  it("and a size between two of them takes the next larger row", () => {
    for (const [between, row] of [
      [4.25, 4.5],
      [5.3, 5.5],
      [6.3, 6.5],
    ] as const)
      expect(minimumOf(material, between / 1000)).toBe(minimumOf(material, row / 1000));
  });
});

// Log fits of the European textbooks, from memory: Rm = a - b lg(d / mm). They check the rows; the catalog does not use them.
describe("the rows of EN 10270-1 follow the log fits of the textbooks", () => {
  it.each([
    ["SM: 1980 - 740 lg d, to 0.4 %", sm, 1980, 740, 0.0045],
    [
      "DH above 4.0 mm, inferred: 2230 - 820 lg d, to 0.6 %",
      smMaxima.filter(([d]) => d > 4).map(([d, s]) => [d, s + 10]),
      2230,
      820,
      0.0065,
    ],
    ["DH: 2230 - 820 lg d, to 0.3 %", dh.filter(([diameter]) => diameter !== 0.9), 2230, 820, 0.0035],
  ] as const)("%s", (_, rows, a, b, tolerance) => {
    for (const [diameter, strength] of rows)
      expect(Math.abs((a - b * Math.log10(diameter)) / strength - 1)).toBeLessThan(tolerance);
  });

  // The fit says 2268 at 0.90 mm and 2248 at 0.95 mm: the printed row is probably the latter's under the wrong label.
  it("but for DH at 0.90 mm, printed 2250 and kept, for it is on the safe side", () => {
    expect(minimumOf("en-dh", 0.0009) / 1e6).toBeCloseTo(2250, 6);
    expect(2230 - 820 * Math.log10(0.9)).toBeGreaterThan(2250 * 1.005);
  });
});
