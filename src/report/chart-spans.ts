/** Signals that set the two axes of the scatter: null leaves an axis to its points. */
export const spanSignals = { x: "acrossSpan", y: "upSpan" } as const;

/** What of a compiled Vega chart is touched here. */
interface Spanned {
  signals?: unknown[];
  readonly marks?: { readonly name?: string; clip?: unknown }[];
  readonly scales?: { readonly name: string; domainRaw?: unknown }[];
}

/**
 * Let the page's script set where the two axes of a chart begin and end, so that a handle has room to move and an axis stands
 * still while it does.
 *
 * @param spec  a chart as Vega-Lite compiled it; its scales and marks are changed
 */
export function giveSpans(spec: Spanned): void {
  spec.signals = [...(spec.signals ?? []), ...Object.values(spanSignals).map((name) => ({ name, value: null }))];
  // While an axis stands still, a point may lie beyond it.
  for (const mark of spec.marks ?? []) {
    if (mark.name?.endsWith("_marks")) mark.clip = true;
  }
  for (const scale of spec.scales ?? []) {
    if (scale.name === "x" || scale.name === "y") scale.domainRaw = { signal: spanSignals[scale.name] };
  }
}
