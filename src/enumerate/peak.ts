/** Where a band is highest, and how high. */
export interface Peak {
  readonly position: number;
  readonly figure: number;
}

/**
 * The highest of a band at whole numbers: halving towards the higher of two neighbours.
 *
 * @param figureAt  rises to one peak and falls from it, flat only at the top
 * @param low       the first position
 * @param high      the last position
 * @param enough    stop at the first position with this figure
 */
export function highestWhole(figureAt: (position: number) => number, low: number, high: number, enough: number): Peak {
  while (low < high) {
    const left = Math.floor((low + high) / 2);
    const atLeft = figureAt(left);
    if (atLeft >= enough) return { position: left, figure: atLeft };
    const atRight = figureAt(left + 1);
    if (atRight >= enough) return { position: left + 1, figure: atRight };
    if (atLeft < atRight) low = left + 1;
    else high = left;
  }
  return { position: low, figure: figureAt(low) };
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** The same between two lengths, by golden sections, until they are 1e-13 of the length apart; both ends are looked at. */
export function highest(figureAt: (length: number) => number, low: number, high: number, enough: number): Peak {
  let best = higher({ position: low, figure: figureAt(low) }, { position: high, figure: figureAt(high) });
  let left = { position: high - GOLDEN * (high - low), figure: 0 };
  let right = { position: low + GOLDEN * (high - low), figure: 0 };
  left.figure = figureAt(left.position);
  right.figure = figureAt(right.position);
  for (;;) {
    best = higher(best, higher(left, right));
    if (best.figure >= enough || high - low <= 1e-13 * high) return best;
    if (left.figure < right.figure) {
      low = left.position;
      left = right;
      const position = low + GOLDEN * (high - low);
      right = { position, figure: figureAt(position) };
    } else {
      high = right.position;
      right = left;
      const position = high - GOLDEN * (high - low);
      left = { position, figure: figureAt(position) };
    }
  }
}

function higher(a: Peak, b: Peak): Peak {
  return b.figure > a.figure ? b : a;
}
