/** The coil of a spring at one length, as a side view needs it. All lengths in one unit, whichever. */
export interface Coil {
  readonly length: number;
  readonly meanDiameter: number;
  readonly wireDiameter: number;
  readonly totalTurns: number;
  /** The first and last turn lie against their neighbours. */
  readonly closed: boolean;
  /** Ends are cut flat, square to the axis. */
  readonly ground: boolean;
  /** Pitch of closed turns; absent: one wire. */
  readonly closedPitch?: number;
  /** How far from its seat the middle line of an unground end begins; absent: half a wire. */
  readonly endHeight?: number;
}

/** A point of the wire's middle line in side view. */
export interface HelixPoint {
  /** Along the axis, from the seat at the left. */
  readonly along: number;
  /** Across the axis, up. */
  readonly across: number;
}

/** Half a turn of wire in front of the axis or behind it. */
export interface HalfTurn {
  readonly front: boolean;
  readonly points: readonly HelixPoint[];
}

/** Points to half a turn: enough that the curve looks smooth at print size. */
const STEPS = 24;

/** Turns over which the pitch changes between a closed end and the active coils. */
const BLEND = 0.5;

/**
 * The middle line of the wire in side view, cut where it passes from front to back. Right-hand wound, starting at the top.
 *
 *   across = D/2 cos 2πt    t from 0 to Nt
 *
 * An unground end begins half a wire from its seat; a ground end begins on it, so that grinding takes half the wire there.
 * Closed ends are one turn at a pitch of one wire, and the pitch changes over half a turn.
 *
 * @param coil  the coil at the length to draw
 * @returns half turns from left to right; a last one may be shorter
 */
export function halfTurns(coil: Coil): HalfTurn[] {
  const along = alongAxis(coil);
  const halves: HalfTurn[] = [];
  for (let half = 0; half < 2 * coil.totalTurns - 1e-9; half++) {
    const from = half / 2;
    const to = Math.min(from + 0.5, coil.totalTurns);
    const points = Array.from({ length: STEPS + 1 }, (_, step) => {
      const turn = from + ((to - from) * step) / STEPS;
      return { along: along(turn), across: (coil.meanDiameter / 2) * Math.cos(2 * Math.PI * turn) };
    });
    halves.push({ front: half % 2 === 0, points });
  }
  return halves;
}

/**
 * How far the flat face of a ground end reaches across the axis, where the plane of its seat cuts the wire.
 *
 * @param coil  a coil with ground ends
 * @param end   which end
 * @returns least and greatest across
 */
export function groundFace(coil: Coil, end: "left" | "right"): { readonly from: number; readonly to: number } {
  const along = alongAxis(coil);
  const radius = coil.wireDiameter / 2;
  const seat = end === "left" ? 0 : coil.length;
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  for (let step = 0; step <= 2 * STEPS; step++) {
    const turn = end === "left" ? step / (2 * STEPS) : coil.totalTurns - step / (2 * STEPS);
    const off = along(turn) - seat;
    if (Math.abs(off) > radius) continue;
    const across = (coil.meanDiameter / 2) * Math.cos(2 * Math.PI * turn);
    const reach = Math.sqrt(radius * radius - off * off);
    from = Math.min(from, across - reach);
    to = Math.max(to, across + reach);
  }
  return { from, to };
}

/** Position of the wire along the axis after so many turns. */
export function alongAxis(coil: Coil): (turn: number) => number {
  const { length, wireDiameter, totalTurns, closed, ground, closedPitch = wireDiameter, endHeight = wireDiameter / 2 } = coil;
  const start = ground ? 0 : endHeight;
  const travel = length - 2 * start;
  if (!closed || totalTurns <= 2) return (turn) => start + (travel * turn) / totalTurns;
  const activePitch = (travel - 2 * closedPitch) / (totalTurns - 2);
  const rise = activePitch - closedPitch;
  return (turn) => start + closedPitch * turn + rise * (ramp(turn - 1) - ramp(turn - (totalTurns - 1)));
}

/** The turns from end to end between which the pitch is constant or changes evenly, so that `alongAxis` is a quadratic there. */
export function pitchBreaks({ totalTurns, closed }: Coil): number[] {
  if (!closed || totalTurns <= 2) return [0, totalTurns];
  const blends = [1, totalTurns - 1].flatMap((middle) => [middle - BLEND / 2, middle + BLEND / 2]);
  return [0, ...blends, totalTurns]
    .sort((a, b) => a - b)
    .filter((turn, i, all) => i === 0 || turn - (all[i - 1] as number) > 1e-6);
}

/** Integral of a step from 0 to 1 at 0, blended linearly over `BLEND` turns about it. */
function ramp(turn: number): number {
  if (turn <= -BLEND / 2) return 0;
  if (turn >= BLEND / 2) return turn;
  return (turn + BLEND / 2) ** 2 / (2 * BLEND);
}
