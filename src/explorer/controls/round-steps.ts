/** Steps across a span: enough to aim, few enough to land on round numbers. */
const MOST_STEPS = 100;

/**
 * The round step, 1, 2 or 5 times a power of ten, that takes between 40 and 100 steps across a span.
 *
 * @param span  above zero, in the unit that a reader sees
 */
export function roundStep(span: number): number {
  const power = 10 ** Math.floor(Math.log10(span / MOST_STEPS));
  const step = [1, 2, 5, 10].find((many) => span / (many * power) <= MOST_STEPS * (1 + 1e-9)) ?? 10;
  return withoutNoise(step * power, power);
}

/** The whole multiple of a step that is nearest to a number. */
export function nearestStep(value: number, step: number): number {
  return withoutNoise(Math.round(value / step) * step, step);
}

/**
 * A number moved by whole steps. One that lies between two multiples goes to a multiple first, so that what follows is round.
 *
 * @param value  in the unit that a reader sees
 * @param steps  how many, a negative count down
 * @param step   the round step
 */
export function movedBy(value: number, steps: number, step: number): number {
  const place = value / step;
  const from = steps > 0 ? Math.floor(place + 1e-9) : Math.ceil(place - 1e-9);
  return withoutNoise((from + steps) * step, step);
}

/** A span widened to whole multiples of a step. */
export function roundSpan([low, high]: readonly [number, number], step: number): readonly [number, number] {
  return [withoutNoise(Math.floor(low / step + 1e-9) * step, step), withoutNoise(Math.ceil(high / step - 1e-9) * step, step)];
}

/** A multiple of a step without the binary digits beyond those of the step. */
function withoutNoise(value: number, step: number): number {
  return Number(value.toFixed(Math.max(0, Math.ceil(-Math.log10(step) - 1e-9))));
}
