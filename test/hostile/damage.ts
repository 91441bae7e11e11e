import fc from "fast-check";

/** One change of a text, in bytes: `at` is a share of its length. */
interface Damage {
  readonly at: number;
  readonly kind: "drop" | "insert" | "replace" | "double" | "cut";
  readonly bytes: Uint8Array;
  readonly length: number;
}

/** What breaks readers: marks of YAML and CSV, ends of the number line, invisible characters, broken UTF-8. */
const fragments = [
  ...["&a ", "*a ", "!!js/function ", "? ", ": ", "- ", "{", "}", "[", "]", "|", ">", "#", "%", "@", "`", "'", '"', "\\", "<<: "],
  ...["1e308", "-1e308", "1e-308", "-0", "nan", "Infinity", "0x10", "1,5", "±", "+/-", "1_000", "٣", " mm", " in", " inch", " %"],
  ...[
    "\r\n",
    "\r",
    "\t",
    "\u0000",
    "\ufeff",
    "\u2028",
    "\u202e",
    "\u001b[31m",
    "\ud83d\ude00",
    "__proto__",
    "constructor",
    "off",
    "NaN7 mm",
    "long".repeat(1500),
  ],
].map((text) => new TextEncoder().encode(text));

const damage: fc.Arbitrary<Damage> = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  kind: fc.constantFrom("drop", "insert", "replace", "double", "cut"),
  bytes: fc.oneof(fc.constantFrom(...fragments), fc.uint8Array({ minLength: 1, maxLength: 4 })),
  length: fc.nat(40),
});

/** A text with a few changes, as bytes. */
export function damaged(text: string): fc.Arbitrary<Buffer> {
  return fc.array(damage, { minLength: 1, maxLength: 4 }).map((all) => all.reduce(damagedBy, Buffer.from(text)));
}

function damagedBy(bytes: Buffer, { at, kind, bytes: fragment, length }: Damage): Buffer {
  const from = Math.floor(at * bytes.length);
  const before = bytes.subarray(0, from);
  const after = bytes.subarray(from);
  switch (kind) {
    case "drop":
      return Buffer.concat([before, after.subarray(length)]);
    case "insert":
      return Buffer.concat([before, fragment, after]);
    case "replace":
      return Buffer.concat([before, fragment, after.subarray(fragment.length)]);
    case "double":
      return Buffer.concat([before, after.subarray(0, length), after]);
    case "cut":
      return Buffer.from(before);
  }
}
