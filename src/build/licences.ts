import { readFileSync } from "node:fs";

/**
 * `npm run licences`: the licence of every package that the program needs or carries, from the lock file. Ends with 1 where one is
 * not among those that may be handed on like this.
 */

/** Licences that ask for no more than their own text on every copy, by SPDX name; MPL-2.0 also for changes to its own files. */
const allowed = [
  "0BSD",
  "Apache-2.0",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "Bitstream-Vera",
  "BlueOak-1.0.0",
  "ISC",
  "MIT",
  "MPL-2.0",
  "Unlicense",
];

/** Licences that a package names no SPDX word for, as its own licence text was read. */
const read: Readonly<Record<string, string>> = { "dejavu-fonts-ttf": "Bitstream-Vera" };

interface Locked {
  readonly version: string;
  readonly license?: string;
  readonly dev?: true;
}

const { packages } = JSON.parse(readFileSync("package-lock.json", "utf8")) as {
  readonly packages: Readonly<Record<string, Locked>>;
};
// Packages for other machines are not installed here, so what they say of themselves is read from the lock file.
const licences = Object.entries(packages)
  .filter(([folder, { dev }]) => folder !== "" && dev !== true)
  .map(([folder, { version, license }]) => {
    const name = folder.slice(folder.lastIndexOf("node_modules/") + "node_modules/".length);
    return { name: `${name} ${version}`, licence: read[name] ?? String(license) };
  });

for (const { name, licence } of licences) console.log(`${licence.padEnd(16)}${name}`);
const others = licences.filter(({ licence }) => !isAllowed(licence));
for (const { name, licence } of others) console.error(`${name}: ${licence} is none of ${allowed.join(", ")}`);
process.exitCode = others.length > 0 ? 1 : 0;

/** An expression such as `(MIT OR GPL-3.0)` may be taken at any of its words, one with AND only at all of them. */
function isAllowed(expression: string): boolean {
  const choices = expression.replace(/[()]/g, "").split(" OR ");
  return choices.some((choice) => choice.split(" AND ").every((licence) => allowed.includes(licence.trim())));
}
