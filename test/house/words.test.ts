import { describe, expect, it } from "vitest";
import { sources, textOf } from "./tree.ts";

/**
 * Identifiers that are gone, since the field has a word for each (the glossary of DEVELOPERS.md). Keys of a result, which a program
 * reads, are not among them: they stay.
 */
const RETIRED = new Set([
  ...["Asks", "asksOf", "FatigueAsk", "SideSpec", "JudgedSide", "judgedSides", "WalkedSide", "Judge", "EngineGround"],
  ...["Tally", "TALLY_ORDER", "WireTallies", "tally", "Stock", "stockAt", "setStock", "hotShare", "hotFigures", "hotWindows"],
  ...[
    "Errand",
    "errand",
    "Walker",
    "walkerOf",
    "walkedHere",
    "Walking",
    "walking",
    "Stumble",
    "Survey",
    "Surveyed",
    "Proving",
    "Proven",
  ],
  ...[
    "Harvest",
    "harvest",
    "GridHarvest",
    "BestHarvest",
    "Peak",
    "peak",
    "border",
    "Survivor",
    "survivor",
    "survivorWalk",
    "MissWalk",
  ],
  ...[
    "Eased",
    "easedBy",
    "easableLimits",
    "GONE",
    "Giving",
    "givingWay",
    "shareNeeded",
    "LeastShare",
    "leastShare",
    "keptChoice",
  ],
  ...["PriceBar", "limitPrices", "concessionsOf", "Scattering", "Lane", "KeptSpring", "keptSpring", "choiceOfKept", "TipEntries"],
  ...["drawnInSight", "pinnedBrief", "WorkedOption", "subjectOf", "placeForRate", "placeAs"],
]);

/** Monotonicity is increasing, decreasing, unimodal or unknown. */
const RETIRED_VALUES = /"(?:rises|falls|band)"/;

/** The identifiers of a source, without its comments and its plain strings. */
function identifiersOf(source: string): readonly string[] {
  const code = textOf(`src/${source}`)
    .replace(/"(?:\\.|[^"\\\n])*"/g, '""')
    .replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, "");
  return code.replace(/`(?:\\.|[^`\\$])*`/g, "``").match(/\b[A-Za-z_]\w*\b/g) ?? [];
}

describe.each(["brief", "catalog", "cli", "constrain", "disk", "enumerate", "explorer", "report", "score", "search", "studies"])(
  "the code of %s",
  (room) => {
    // A style sheet has the words of CSS.
    const files = sources.filter((file) => file.startsWith(`${room}/`) && !file.endsWith("/stylesheet.ts"));

    it("has no identifier that is retired", () => {
      const found = files.flatMap((file) =>
        identifiersOf(file).flatMap((name) => (RETIRED.has(name) ? [`${file}: ${name}`] : [])),
      );
      expect([...new Set(found)]).toEqual([]);
    });

    it("names no monotonicity otherwise", () => {
      const declaring = files.filter((file) => /^(?:constrain|enumerate|search)\//.test(file));
      expect(declaring.filter((file) => RETIRED_VALUES.test(textOf(`src/${file}`)))).toEqual([]);
    });
  },
);
