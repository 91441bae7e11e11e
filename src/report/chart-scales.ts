/** What of a compiled chart says over which data its scales reach. */
export interface Scaled {
  readonly data?: readonly { readonly name: string; readonly source?: string }[];
  readonly scales?: readonly { readonly domain?: unknown }[];
}

/**
 * Let scales reach over the springs that are drawn, not over those marked among them as well. What is marked lies within, and a
 * scale that depended on it would have every point worked out anew whenever the pointer comes to another one.
 *
 * @param chart  a chart as Vega-Lite compiled it; its scales are changed in place
 * @param drawn  the names of the data that the scales are of
 */
export function scaleOver({ data = [], scales = [] }: Scaled, drawn: readonly string[]): void {
  const sources = new Map(data.map(({ name, source }) => [name, source]));
  const rootOf = (name: string): string => {
    const source = sources.get(name);
    return source === undefined ? name : rootOf(source);
  };
  for (const { domain } of scales) {
    const { fields } = (domain ?? {}) as { fields?: readonly { readonly data: string }[] };
    if (fields === undefined) continue;
    const own = fields.filter((field) => drawn.includes(rootOf(field.data)));
    if (own.length > 0) Object.assign(domain as object, { fields: own });
  }
}
