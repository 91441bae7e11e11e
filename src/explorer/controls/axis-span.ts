import { roundSpan, roundStep } from "./round-steps.ts";

/** Both ends of an axis, in the unit that a reader sees. */
export type AxisSpan = readonly [low: number, high: number];

/** Room beyond the outermost bound, as a share of what the axis must show: space to ease it by. */
const REACH = 0.2;

/**
 * The axis that shows these points and bounds, with room beyond each bound.
 *
 * @param points  figures of the springs drawn, in the unit that a reader sees; none where nothing fits
 * @param bounds  where handles stand on this axis
 * @param before  the axis as it is, if it is
 * @returns the axis as it is while it holds all that and is not much too wide, so that it does not jump; else a new one, round
 */
export function fitSpan(points: readonly number[], bounds: readonly number[], before: AxisSpan | null): AxisSpan | null {
  // Where nothing fits the axis keeps what it showed, so that a handle finds its way back.
  const all = [...(points.length > 0 ? points : (before ?? [])), ...bounds];
  if (all.length === 0) return before;
  const low = least(all);
  const high = -least(all.map((value) => -value));
  const width = high - low || Math.abs(high) * 0.2 || 1;
  // A point at the very edge of the axis would be cut in half.
  const edge = 0.03 * width;
  const need = [
    Math.min(low - edge, ...bounds.map((value) => value - REACH * width)),
    Math.max(high + edge, ...bounds.map((value) => value + REACH * width)),
  ] as const;
  const holds = before !== null && (points.length === 0 || (before[0] <= low - edge && before[1] >= high + edge));
  const isFar = before !== null && points.length > 0 && before[1] - before[0] > 2 * (need[1] - need[0]);
  if (holds && !isFar && bounds.every((value) => inside(value, before))) return before;
  const [from, to] = roundSpan(need, 2 * roundStep(need[1] - need[0]));
  return [low > 0 ? Math.max(0, from) : from, to];
}

/** Whether a handle here has room on both sides. */
function inside(value: number, [low, high]: AxisSpan): boolean {
  const room = 0.05 * (high - low);
  return value - low > (low === 0 ? 0 : room) && high - value > room;
}

/** Without spreading thousands of arguments over a call. */
function least(values: readonly number[]): number {
  return values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
}
