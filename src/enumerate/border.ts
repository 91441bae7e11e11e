/** A position with how far its margin is above the one that passes; at or above zero it passes. */
export interface End {
  readonly position: number;
  readonly excess: number;
}

/**
 * The last position that passes on the way from one that passes to one that fails, between which the verdict changes once.
 *
 * Looks where a straight line through both ends crosses zero, an end that stays for two looks counting half (the Illinois rule),
 * in the middle where four looks have not halved what lies between, and over the reals just inside an end that the line does not
 * tell from the border, further each time: the border is where the verdicts say, whatever the line says, but a smooth margin is
 * found in about a quarter of the looks that halving alone takes.
 *
 * @param excessAt  margin above the one that passes, at a position
 * @param passing   an end that passes
 * @param failing   an end that fails
 * @param whole     true where positions are whole numbers
 * @returns a position that passes, its neighbour towards `failing` failing; over the reals the neighbour is the next double
 */
export function border(excessAt: (position: number) => number, passing: End, failing: End, whole: boolean): number {
  let { position: pass, excess: atPass } = passing;
  let { position: fail, excess: atFail } = failing;
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
    const excess = excessAt(position);
    const passes = excess >= 0;
    if (passes) {
      pass = position;
      atPass = excess;
      if (passMovedLast && look > 1) atFail /= 2;
    } else {
      fail = position;
      atFail = excess;
      if (!passMovedLast && look > 1) atPass /= 2;
    }
    passMovedLast = passes;
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
