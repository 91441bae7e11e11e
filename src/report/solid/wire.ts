import { alongAxis, type Coil, pitchBreaks } from "../drawing/helix.ts";

/** A place in space, mm: the axis of the coil is z, its lower seat lies in z = 0. */
export type Point = readonly [x: number, y: number, z: number];

/** A part of the wire, of at most one turn, over which its pitch is constant or changes evenly. */
export interface Span {
  readonly from: number;
  readonly to: number;
  /**
   * The place so many radii of the wire outwards, upwards and ahead of its middle line after so many turns; beyond its ends the
   * span goes on by the same law.
   */
  readonly at: (turn: number, outwards: number, upwards: number, ahead?: number) => Point;
}

/** How far a cubic through its points may stray from the surface of the wire: mm, and as a share of its diameter. */
const DEVIATION = { most: 1e-4, share: 3e-5 };

/** Samples on each side of a control point: what lies beyond weighs less than 1e-9. */
const REACH = 16;

/**
 * The wire of a coil from end to end. Spans are short because a kernel that caps its sampling of a face gets the volume of a longer
 * one wrong.
 *
 * @param coil  mm
 * @param left  whether it is wound left-hand: the right-hand coil in a mirror
 */
export function spansOf(coil: Coil, left: boolean): Span[] {
  const { meanDiameter, wireDiameter } = coil;
  const along = alongAxis(coil);
  const breaks = pitchBreaks(coil);
  const around = Math.PI * meanDiameter;
  return breaks.slice(1).flatMap((to, i) => {
    const from = breaks[i] as number;
    const half = (to - from) / 2;
    const [start, middle, end] = [along(from), along(from + half), along(to)];
    const bend = (end - 2 * middle + start) / half ** 2;
    const at: Span["at"] = (turn, outwards, upwards, ahead = 0) => {
      const off = turn - from - half;
      const slope = (end - start) / (2 * half) + bend * off;
      const [level, steep] = [around / Math.hypot(around, slope), slope / Math.hypot(around, slope)];
      const [cos, sin] = [Math.cos(2 * Math.PI * turn), Math.sin(2 * Math.PI * turn)];
      const radius = wireDiameter / 2;
      const radial = meanDiameter / 2 + radius * outwards;
      const aside = radius * (ahead * level - upwards * steep);
      const height =
        middle + ((end - start) / (2 * half)) * off + (bend / 2) * off ** 2 + radius * (upwards * level + ahead * steep);
      return [radial * cos - aside * sin, (left ? -1 : 1) * (radial * sin + aside * cos), height];
    };
    const pieces = Math.ceil(to - from - 1e-9);
    const place = (piece: number) => from + (2 * half * piece) / pieces;
    return Array.from({ length: pieces }, (_, piece) => ({ from: place(piece), to: place(piece + 1), at }));
  });
}

/** In how many pieces cubics follow the wire over part of a turn: they stray by R h⁴/384, h the angle of a piece. */
export function piecesOver(turns: number, { meanDiameter, wireDiameter }: Coil): number {
  const deviation = Math.min(DEVIATION.most, DEVIATION.share * wireDiameter);
  return Math.max(3, Math.ceil(2 * Math.PI * turns * ((meanDiameter + wireDiameter) / 768 / deviation) ** 0.25));
}

/**
 * Control points of the uniform cubic spline, clamped at its ends, that meets a smooth curve at every knot.
 *
 *   c_i = √3 Σ_k (√3 - 2)^|k| f(i + k)
 *
 * The curve is asked beyond both ends too, so that splines of neighbouring spans meet smoothly without a system to solve.
 *
 * @param curve   the curve from 0 to 1 and beyond
 * @param pieces  between its knots, at least 3
 * @param ends    its first and last point, given, so that splines which meet share one to the last digit
 * @source Unser, Aldroubi, Eden: B-spline signal processing, part I, 1993, the direct cubic spline filter; from memory
 */
export function cubicThrough(curve: (fraction: number) => Point, pieces: number, ends: readonly [Point, Point]): Point[] {
  const sum = (terms: readonly (readonly [weight: number, at: Point])[]) =>
    [0, 1, 2].map((axis) => terms.reduce((total, [weight, at]) => total + weight * (at[axis] as number), 0)) as unknown as Point;
  const control = (i: number) =>
    sum(
      Array.from({ length: 2 * REACH + 1 }, (_, k) => [
        Math.sqrt(3) * (Math.sqrt(3) - 2) ** Math.abs(k - REACH),
        curve((i + k - REACH) / pieces),
      ]),
    );
  const inner = Array.from({ length: pieces + 1 }, (_, i) => control(i));
  const second = (first: number, next: number) =>
    sum([
      [2 / 3, inner.at(first) as Point],
      [1 / 3, inner.at(next) as Point],
    ]);
  return [ends[0], second(0, 1), ...inner.slice(1, -1), second(-1, -2), ends[1]];
}
