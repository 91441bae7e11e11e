/**
 * The middle of what the free-length window leaves of max(Li + lo_i/k) .. min(Li + hi_i/k); where it leaves nothing, the end
 * that misses it least, so that the free-length limit says by how much; where no length serves every point (the rate is
 * outside its window), the middle of the gap.
 */
export function middleOfPoints(
  {
    lengths,
    low,
    high,
  }: { readonly lengths: readonly number[]; readonly low: readonly number[]; readonly high: readonly number[] },
  rate: number,
  shortest: number,
  longest: number,
): number {
  let least = 0;
  let most = Number.POSITIVE_INFINITY;
  for (let i = 0; i < lengths.length; i++) {
    least = Math.max(least, (lengths[i] as number) + (low[i] as number) / rate);
    most = Math.min(most, (lengths[i] as number) + (high[i] as number) / rate);
  }
  if (least > most) return (least + most) / 2;
  if (least > longest) return least;
  if (most < shortest) return most;
  return (Math.max(least, shortest) + Math.min(most, longest)) / 2;
}
