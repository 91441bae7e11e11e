/**
 * Spring index.
 *
 *   C = D / d
 *
 * @param meanDiameter  D, m
 * @param wireDiameter  d, m
 * @returns pure number
 * @range wound springs lie between about 4 and 12; below 2 and above 25 nothing is made
 * @source Shigley, Mechanical Engineering Design, section 10-1
 */
export function springIndex(meanDiameter: number, wireDiameter: number): number {
  return meanDiameter / wireDiameter;
}

/**
 * Pitch of the active coils in the free spring.
 *
 *   L0 = p (Na + pitchTurns) + pitchWires d
 *
 * @param freeLength    L0, m
 * @param wireDiameter  d, m
 * @param activeTurns   Na, pure number
 * @param pitchTurns    turns beyond the active ones that take pitch, pure number: 1 for plain and ground ends, else 0
 * @param pitchWires    wire thicknesses in the free length that take no pitch, pure number: 1, 0, 3, 2 by end style
 * @returns m
 * @range Na + pitchTurns > 0
 * @source Shigley Table 10-1; Machinery's Handbook, 31st ed., springs, Table 3
 */
export function pitch(
  freeLength: number,
  wireDiameter: number,
  activeTurns: number,
  pitchTurns: number,
  pitchWires: number,
): number {
  return (freeLength - pitchWires * wireDiameter) / (activeTurns + pitchTurns);
}

/**
 * Pitch angle of the coils at the mean diameter.
 *
 *   tan(angle) = p / (π D)
 *
 * @param pitch         p, m
 * @param meanDiameter  D, m
 * @returns rad
 * @range under about 12° (common practice, no source)
 * @source geometry of the helix
 */
export function pitchAngle(pitch: number, meanDiameter: number): number {
  return Math.atan(pitch / (Math.PI * meanDiameter));
}

/**
 * Outside diameter of a spring pressed between plates that let its ends turn: the wire keeps its length, so the coil grows as its
 * pitch falls.
 *
 *   De = [D² + (p² - p'²) / π²]^½ + d
 *
 * @param meanDiameter  D, m, as wound
 * @param wireDiameter  d, m
 * @param pitch         p, m, as wound
 * @param pressedPitch  p', m, as pressed
 * @returns m
 * @range D > d, p >= p' >= d; finite beyond it
 * @source Associated Spring, Design Handbook, from memory, which prints it for solid, where p' = d
 */
export function outsideDiameterPressed(meanDiameter: number, wireDiameter: number, pitch: number, pressedPitch: number): number {
  const squared = meanDiameter * meanDiameter + (pitch * pitch - pressedPitch * pressedPitch) / (Math.PI * Math.PI);
  // Below a third of the wire's diameter the coil is none; such candidates fall at their index, and still have a figure.
  return Math.sqrt(Math.max(0, squared)) + wireDiameter;
}

/**
 * Outside diameter of a spring pressed solid between plates that let its ends turn: the wire keeps its length, so the coil grows
 * as its pitch falls to the wire diameter.
 *
 *   Ds = [D² + (p² - d²) / π²]^½ + d
 *
 * @param meanDiameter  D, m, as wound
 * @param wireDiameter  d, m
 * @param pitch         p, m, as wound
 * @returns m
 * @range D > d, p >= d; finite beyond it
 * @source Associated Spring, Design Handbook, from memory
 */
export function outsideDiameterAtSolid(meanDiameter: number, wireDiameter: number, pitch: number): number {
  return outsideDiameterPressed(meanDiameter, wireDiameter, pitch, wireDiameter);
}

/**
 * Growth of the outside diameter on pressing solid, as the European standard gives it.
 *
 *   ΔDe = 0.1 (m² - 0.8 m d - 0.2 d²) / D    m = (L0 - d) / n ground, (L0 - 2.5 d) / n not
 *
 * @param meanDiameter  D, m
 * @param wireDiameter  d, m
 * @param gap           m, the pitch that the standard takes, m
 * @returns m
 * @range cold coiled springs
 * @source EN 13906-1, clause 9.11, from memory
 */
export function diameterGrowth(meanDiameter: number, wireDiameter: number, gap: number): number {
  return (0.1 * (gap * gap - 0.8 * gap * wireDiameter - 0.2 * wireDiameter * wireDiameter)) / meanDiameter;
}
