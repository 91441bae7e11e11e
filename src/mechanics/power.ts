/**
 * A power with a broken exponent, from the exponential and the logarithm.
 *
 *   x^y = e^(y ln x)
 *
 * The language leaves the last digit of `**` to whoever runs it, and two versions of one engine do differ in it; these two functions
 * agree. So the page prints what the command line prints.
 *
 * @param base      x, pure number
 * @param exponent  y, pure number
 * @returns pure number, right to a few units of the last digit
 * @range x above zero
 * @source definition of a real power
 */
export function power(base: number, exponent: number): number {
  return Math.exp(exponent * Math.log(base));
}
