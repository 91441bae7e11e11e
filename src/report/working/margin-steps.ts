import { thresholdSource } from "../../check/threshold.ts";
import type { Candidate } from "../../constrain/candidate.ts";
import { limitsFor } from "../../constrain/limits.ts";
import type { Side } from "../../constrain/side.ts";
import { madeSizes, temperatureMargin } from "../../constrain/stock.ts";
import type { LimitName } from "../../model.ts";
import { limitWords } from "../words.ts";
import { judgedBy } from "./judged.ts";
import type { Steps } from "./steps.ts";
import type { Subject } from "./subject.ts";

const MARGIN = "share of the limit that is left; below zero it fails";

/** Every limit asked: its figure, its bound, its margin. */
export function marginSteps(steps: Steps, subject: Subject): void {
  const { asks, candidate, design, brief, material } = subject;
  // Sources are told of one material.
  const ofMaterial = { ...brief, sweep: { ...brief.sweep, materials: [material] } };
  steps.chapter("Margins");
  materialMargins(steps, subject);
  for (const { name, sides, reported } of limitsFor(asks)) {
    if (!reported) continue;
    for (const side of sides) {
      const number = marginCount(steps) + 1;
      const { text, from } = thresholdSource(ofMaterial, asks, name, side, side.terms(candidate).limitValue);
      const { value, bound } = judgedBy(steps, subject, name, side, from === "brief" ? `brief: ${text}` : text);
      marginStep(steps, number, name, expressionOf(side, candidate, value, bound), side.shownMargin(candidate));
    }
  }
  for (const name of ["rate", "clash"] as const) {
    if (design.margins[name] === 0 && !limitsFor(asks).some((limit) => limit.name === name)) {
      steps.note(`The ${limitWords[name].label} is met by construction.`);
    }
  }
}

/** A safety is the bound of its stress over that stress, over the safety asked. */
function expressionOf(side: Side, candidate: Candidate, value: string, bound: string): string {
  const { sense, askedSense } = side;
  if (askedSense !== sense) return side.value(candidate) > 0 ? `min(1, ${bound} / ${value} - 1)` : "1";
  return `min(1, ${sense === "most" ? `1 - ${value} / ${bound}` : `${value} / ${bound} - 1`})`;
}

function materialMargins(steps: Steps, { material, brief, design, asks }: Subject): void {
  const { min, max } = madeSizes(material, brief.service.strength);
  steps.given(["dm1", "smallestMade", "smallest size that the strength holds for"], "length", min, material.source);
  steps.given(["dm2", "largestMade", "largest size that the strength holds for"], "length", max, material.source);
  const wire = Math.min(1, design.wireDiameter / min - 1, 1 - design.wireDiameter / max);
  marginStep(steps, 1, "wire", "min(1, d / dm1 - 1, 1 - d / dm2)", wire);
  if (asks.temperature === null) return;
  const hottest = ["tmax", "highestTemperature", "highest temperature of the material"] as const;
  steps.given(hottest, "temperature", material.temperature.max, material.source);
  const room = steps.units.length === "mm" ? 20 : 68;
  const expression = `min(1, 1 - (t - ${room}) / (tmax - ${room}))`;
  marginStep(steps, 2, "temperature", expression, temperatureMargin(material, asks.temperature));
}

function marginStep(steps: Steps, number: number, limit: LimitName, expression: string, engine: number): void {
  steps.derived([`M${number}`, `marginOf${number}`, `margin: ${limitWords[limit].label}`], "number", expression, MARGIN, engine);
}

function marginCount(steps: Steps): number {
  return (steps.chapters.at(-1)?.steps ?? []).filter(({ symbol }) => /^M\d+$/.test(symbol)).length;
}
