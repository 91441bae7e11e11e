/** What is judged at a position; where the margin is not below the one that passes, it passes. */
export interface Margins {
  marginAt(position: number): number;
}

/**
 * The last position that passes on the way from one that passes to one that fails, between which the verdict changes once. Regula
 * falsi with the Illinois modification: evaluates where the line through both ends crosses zero, and halves the margin at an end
 * that stays for two evaluations. Evaluates in the middle where four looks have not halved what lies between, and over the reals
 * just inside an end that the line does not tell from the boundary, further each time: the boundary is where the verdicts say,
 * whatever the line says, but a smooth margin is found in about a quarter of the looks that halving alone takes.
 *
 * Ends come as bare numbers, since a search over the reals spends most of its time here.
 *
 * @param margins  what is judged
 * @param passes   the least margin that passes
 * @param pass     an end that passes
 * @param atPass   how far its margin is above that
 * @param fail     an end that fails
 * @param atFail   the same there, below zero
 * @param whole    true where positions are whole numbers
 * @returns a position that passes, its neighbour towards the end that fails failing; over the reals the neighbour is the next
 *   double
 */
export function boundary(
  margins: Margins,
  passes: number,
  pass: number,
  atPass: number,
  fail: number,
  atFail: number,
  whole: boolean,
): number {
  let passMovedLast = false;
  let between = Math.abs(fail - pass);
  let creep = Number.EPSILON / 2;
  for (let look = 1; ; look++) {
    const middle = whole ? Math.floor((pass + fail) / 2) : (pass + fail) / 2;
    if (middle === pass || middle === fail) return pass;
    let position = pass + ((fail - pass) * atPass) / (atPass - atFail);
    const near = creep * Math.abs(pass);
    if (look % 4 === 0) {
      const left = Math.abs(fail - pass);
      if (left > between / 2) position = middle;
      between = left;
    }
    if (whole) position = inside(Math.round(position), pass, fail);
    else if (Math.abs(position - pass) < near || Math.abs(position - fail) < near) {
      const atPassing = Math.abs(position - pass) < near;
      const inwards = fail > pass === atPassing ? near : -near;
      position = (atPassing ? pass : fail) + inwards;
      creep *= 4;
    }
    if (!whole && !strictlyBetween(position, pass, fail)) position = middle;
    const excess = margins.marginAt(position) - passes;
    const itPasses = excess >= 0;
    if (itPasses) {
      pass = position;
      atPass = excess;
      if (passMovedLast && look > 1) atFail /= 2;
    } else {
      fail = position;
      atFail = excess;
      if (!passMovedLast && look > 1) atPass /= 2;
    }
    passMovedLast = itPasses;
  }
}

/** A whole number strictly between two that are at least two apart. */
function inside(position: number, a: number, b: number): number {
  const low = Math.min(a, b) + 1;
  const high = Math.max(a, b) - 1;
  return position < low ? low : Math.min(position, high);
}

function strictlyBetween(position: number, a: number, b: number): boolean {
  return a < b ? a < position && position < b : b < position && position < a;
}
