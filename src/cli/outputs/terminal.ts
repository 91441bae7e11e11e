import type { Terminal } from "../../report/text/layout.ts";

/**
 * What stdout can show: bold only on a terminal whose user has not said no.
 *
 * @param color  false where `--no-color` was typed
 */
export function thisTerminal(color: boolean): Terminal {
  const { isTTY, columns } = process.stdout;
  // A table is laid out for 80 columns at least; a terminal that does not know its width says 0.
  return { width: Math.max(columns ?? 0, 80), colour: color && isTTY === true && !process.env.NO_COLOR };
}
