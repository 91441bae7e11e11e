import type { Brief, Design, LimitName, Spread } from "../model.ts";
import { show } from "../units/show.ts";
import type { Facts } from "./facts.ts";
import { countWords } from "./funnel.ts";
import { drawnWords, fallLabel, yieldCautions, yieldUnknown, yieldWords } from "./scatter-words.ts";

/** What springs drawn about one design do; null where none are drawn. */
export function scatterFacts({ service, units }: Brief, { scatter }: Design): Facts | null {
  if (service.scatter === undefined || scatter === undefined) return null;
  const heading = "How springs of it vary";
  if (scatter === null) return { heading, entries: [["yield", yieldUnknown]], notes: [] };
  const row = (label: string, dimension: "force" | "rate", { mean, standardDeviation, least, greatest }: Spread) => [
    label,
    show(mean, dimension, units),
    show(standardDeviation, dimension, units, 3),
    `${show(least, dimension, units)} to ${show(greatest, dimension, units)}`,
  ];
  return {
    heading,
    entries: [
      ["yield: meet every force window and limit", yieldWords(scatter, units)],
      ...Object.entries(scatter.falls).map(
        ([name, count]) => [`fall first at ${fallLabel(name as LimitName)}`, countWords(count)] as const,
      ),
    ],
    table: {
      heads: ["mean", "standard deviation", "least and greatest"],
      rows: [...scatter.forces.map((force) => row(`force at ${force.name}`, "force", force)), row("rate", "rate", scatter.rate)],
    },
    notes: [drawnWords(service.scatter, scatter, units), ...yieldCautions(scatter)],
  };
}
