import { mersenne } from "pure-rand/generator/mersenne";
import { expect, it } from "vitest";

/** ISO/IEC 14882 (C++), clause [rand.predef]: the 10000th number of a default-constructed mt19937, whose seed is 5489. */
it("the generator that draws springs gives the number that the C++ standard prints for MT19937", () => {
  const generator = mersenne(5489);
  for (let i = 1; i < 10_000; i++) generator.next();
  expect(generator.next() >>> 0).toBe(4_123_659_995);
});
