/** The position of a maximum, and the figure there. */
export interface Maximum {
  readonly position: number;
  readonly figure: number;
}

/**
 * The maximum of a unimodal figure at whole numbers, by bisection towards the higher of two neighbours.
 *
 * @param figureAt  rises to one peak and falls from it, flat only at the top
 * @param low       the first position
 * @param high      the last position
 * @param enough    stop at the first position with this figure
 */
export function maximumOfWhole(figureAt: (position: number) => number, low: number, high: number, enough: number): Maximum {
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

/** The same between two lengths by golden-section search, to a relative width of 1e-13; both ends are evaluated. */
export function maximumByGoldenSection(figureAt: (length: number) => number, low: number, high: number, enough: number): Maximum {
  let position = low;
  let figure = figureAt(low);
  const look = (at: number): number => {
    const here = figureAt(at);
    if (here > figure) {
      position = at;
      figure = here;
    }
    return here;
  };
  look(high);
  let left = high - GOLDEN * (high - low);
  let right = low + GOLDEN * (high - low);
  let atLeft = look(left);
  let atRight = look(right);
  while (figure < enough && high - low > 1e-13 * high) {
    if (atLeft < atRight) {
      low = left;
      left = right;
      atLeft = atRight;
      right = low + GOLDEN * (high - low);
      atRight = look(right);
    } else {
      high = right;
      right = left;
      atRight = atLeft;
      left = high - GOLDEN * (high - low);
      atLeft = look(left);
    }
  }
  return { position, figure };
}

/** How far inside an end the other point of its chord stands, as a share of what lies between the ends. */
const CHORD = 1e-3;
/** A peak is found where chords leave no more room above it than this. */
const ROOM_LEFT = 1e-12;

/**
 * The same where the figure is concave: no point lies above the line through two others on one side of it, so the peak stands
 * where the lines through a short chord at each end cross, or below. A figure made of straight pieces takes a handful of looks.
 */
export function maximumOfConcave(figureAt: (length: number) => number, low: number, high: number, enough: number): Maximum {
  let best: Maximum = { position: low, figure: Number.NEGATIVE_INFINITY };
  const look = (position: number): number => {
    const figure = figureAt(position);
    if (figure > best.figure) best = { position, figure };
    return figure;
  };
  let atLow = look(low);
  let atHigh = look(high);
  while (best.figure < enough && high - low > 1e-13 * high) {
    const chord = CHORD * (high - low);
    const afterLow = look(low + chord);
    const beforeHigh = look(high - chord);
    if (afterLow <= atLow) {
      high = low + chord;
      atHigh = afterLow;
    } else if (beforeHigh <= atHigh) {
      low = high - chord;
      atLow = beforeHigh;
    } else {
      const rise = (afterLow - atLow) / chord;
      const fall = (beforeHigh - atHigh) / chord;
      const crossing = low + (atHigh - atLow + fall * (high - low)) / (rise + fall);
      const position = Math.min(high - 2 * chord, Math.max(low + chord, crossing));
      const figure = look(position);
      if (atLow + rise * (crossing - low) - best.figure <= ROOM_LEFT) break;
      const after = look(position + chord);
      if (after > figure) {
        low = position;
        atLow = figure;
      } else {
        high = position + chord;
        atHigh = after;
      }
    }
  }
  return best;
}
