import { describe, expect, it } from "vitest";
import { shipped } from "../catalog/shipped.ts";

const inch = 0.0254;

function diameterOf(series: string, label: string): number {
  const wire = shipped.series(series, "").wires.find((candidate) => candidate.label === label);
  if (wire === undefined) throw new Error(`no wire ${label} in ${series}`);
  return wire.diameter;
}

/** `7/0=.4900 6/0=.4615` -> pairs of number and printed size. */
function printed(text: string): [string, string][] {
  return text
    .trim()
    .split(/\s+/)
    .map((pair) => pair.split("=") as [string, string]);
}

// As printed by wire merchants; every printed digit must come back. No. 38 is left out: see below.
describe("music wire numbers of ASTM A228, in", () => {
  const table = `
    7/0=.003 6/0=.004 5/0=.005 4/0=.006 3/0=.007 2/0=.008 0=.009 1=.010 2=.011 3=.012 4=.013 5=.014 6=.016 7=.018
    8=.020 9=.022 10=.024 11=.026 12=.029 13=.031 14=.033 15=.035 16=.037 17=.039 18=.041 19=.043 20=.045 21=.047
    22=.049 23=.051 24=.055 25=.059 26=.063 27=.067 28=.071 29=.075 30=.080 31=.085 32=.090 33=.095 34=.100 35=.106
    36=.112 37=.118 39=.130 40=.138 41=.146 42=.154 43=.162 44=.170 45=.180`;
  it.each(printed(table))("no. %s is %s", (label, size) => {
    expect((diameterOf("us-music", label) / inch).toFixed(3)).toBe(`0${size}`);
  });

  // Shigley Table A-28, from memory, against one wire merchant's copy.
  it("no. 38 is the .124 of Shigley Table A-28, not the .125 of one copy", () => {
    expect((diameterOf("us-music", "38") / inch).toFixed(3)).toBe("0.124");
  });
});

// As printed by wire merchants, 7/0 to 31; the rest of the series is from memory and not checked here.
describe("steel wire gauge (Washburn and Moen), in", () => {
  const table = `
    7/0=.4900 6/0=.4615 5/0=.4305 4/0=.3938 3/0=.3625 2/0=.3310 0=.3065 1=.2830 2=.2625 3=.2437 4=.2253 5=.2070
    6=.1920 7=.1770 8=.1620 9=.1483 10=.1350 11=.1205 12=.1055 13=.0915 14=.0800 15=.0720 16=.0625 17=.0540 18=.0475
    19=.0410 20=.0348 21=.0317 22=.0286 23=.0258 24=.0230 25=.0204 26=.0181 27=.0173 28=.0162 29=.0150 30=.0140
    31=.0132`;
  it.each(printed(table))("no. %s is %s", (label, size) => {
    expect((diameterOf("us-steel", label) / inch).toFixed(4)).toBe(`0${size}`);
  });
});

// As printed by wire merchants.
describe("imperial standard wire gauge, in", () => {
  const table = `
    7/0=.500 6/0=.464 5/0=.432 4/0=.400 3/0=.372 2/0=.348 0=.324 1=.300 2=.276 3=.252 4=.232 5=.212 6=.192 7=.176
    8=.160 9=.144 10=.128 11=.116 12=.104 13=.092 14=.080 15=.072 16=.064 17=.056 18=.048 19=.040 20=.036 21=.032
    22=.028 23=.024 24=.022 25=.020 26=.018 27=.0164 28=.0148 29=.0136 30=.0124 31=.0116 32=.0108 33=.0100 34=.0092
    35=.0084 36=.0076 37=.0068 38=.0060 39=.0052 40=.0048 41=.0044 42=.0040 43=.0036 44=.0032 45=.0028`;
  it.each(printed(table))("no. %s is %s", (label, size) => {
    const digits = size.length - 1;
    expect((diameterOf("swg", label) / inch).toFixed(digits)).toBe(`0${size}`);
  });
});

// ASTM B258: 0.005 in x 92^((36 - n) / 39), four decimals; 2/0 is n = -1 and so on. Formula from memory.
describe("American wire gauge by the formula of ASTM B258", () => {
  it.each(shipped.series("awg", "").wires.map(({ label, diameter }) => [label, (diameter / inch).toFixed(4)]))(
    "no. %s is %s",
    (label, size) => {
      const number = label.endsWith("/0") ? 1 - Number.parseInt(label, 10) : Number(label);
      expect((0.005 * 92 ** ((36 - number) / 39)).toFixed(4)).toBe(size);
    },
  );

  // The four sizes that everyone prints: wire merchants' tables.
  it.each([
    ["4/0", ".4600"],
    ["0", ".3249"],
    ["10", ".1019"],
    ["36", ".0050"],
  ])("no. %s is printed %s", (label, size) => {
    expect((diameterOf("awg", label) / inch).toFixed(4)).toBe(`0${size}`);
  });
});

// ISO 3 rounds the terms of a geometric series by up to about 1.3 %; numbers from memory, so the series is the check.
describe.each([10, 20, 40])("ISO 3, series R%d", (terms) => {
  const wires = shipped.series(`iso-r${terms}`, "").wires;

  it.each(wires.map(({ label, diameter }, i) => [label, diameter * 1000, 0.1 * 10 ** (i / terms)] as const))(
    "%s stands where the geometric series has it",
    (_, printedSize, exact) => {
      expect(Math.abs(printedSize / exact - 1)).toBeLessThan(0.013);
    },
  );

  it("runs from 0.1 mm to 16 mm, where R20 and R40 keep every size of the coarser one", () => {
    const sizes = wires.map(({ label }) => label);
    expect([sizes[0], sizes.at(-1)]).toEqual(["0.1 mm", "16 mm"]);
    if (terms > 10)
      expect(sizes).toEqual(expect.arrayContaining(shipped.series(`iso-r${terms / 2}`, "").wires.map(({ label }) => label)));
  });
});

// ASTM A231/A231M-96 and A232/A232M-05, SI rows; sheets that quote JIS G 3521, G 3522 and G 4314; Bhandari, Tables 10.1 and 10.2.
describe.each([
  ["us-metric", 31, "0.50 0.65 1.10 2.20 2.80 5.50 6.50 12.00"],
  ["jis", 44, "0.08 0.23 0.29 0.35 1.20 2.30 2.60 2.90 5.50 7.00 12.0"],
  ["is-4454", 24, "0.3 0.9 1.5 3.6 4.5 8 10"],
])("the series %s", (series, count, sizes) => {
  it.each(sizes.split(" "))("has %s mm", (size) => {
    expect(diameterOf(series, `${Number(size)} mm`)).toBeCloseTo(Number(size) / 1000, 12);
  });
  it(`has ${count} sizes in all`, () => expect(shipped.series(series, "").wires).toHaveLength(count));
});

// A textbook's list of preferred wire diameters, mm; those of it that EN 10270-1 has too.
describe("EN 10270-1 nominal diameters", () => {
  it.each("0.10 0.12 0.16 0.20 0.25 0.30 0.40 0.50 0.65 0.80 1.0 1.2 1.6 2.0 2.5 3.0 4.0 5.0 6.0 8.0 10 12 14 16".split(" "))(
    "have %s mm",
    (size) => {
      expect(diameterOf("en-10270", `${Number(size)} mm`)).toBeCloseTo(Number(size) / 1000, 12);
    },
  );
});
