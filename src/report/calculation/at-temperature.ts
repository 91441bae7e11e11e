import type { Design, Material } from "../../model.ts";
import { lossWords, relaxationAsked } from "../text/spring-summary.ts";
import type { Steps } from "./steps.ts";
import { briefSource, type WorkedSpring } from "./worked-spring.ts";

/** The spring at its service temperature: modulus, rate and forces as they fall. */
export function heatSteps(steps: Steps, { design, brief, material }: WorkedSpring): void {
  const { hot: atTemperature } = design;
  if (atTemperature === null) return;
  steps.chapter("At service temperature");
  steps.given(
    ["t", "serviceTemperature", "service temperature"],
    "temperature",
    atTemperature.temperature,
    briefSource(brief, "service.temperature"),
  );
  moduliAtTemperature(steps, design, material);
  if (atTemperature.relaxation === null) {
    steps.note(`How much load this material loses in time is not known: ask for ${relaxationAsked(design, brief.units)}.`);
  } else {
    const after = lossWords(atTemperature, brief.units);
    const lost = `share of load lost in time (${after}): the least among published points at least as hot and as stressed`;
    steps.given(["vr", "relaxation", lost], "number", atTemperature.relaxation, material.relaxation?.source ?? material.source);
  }
}

/** Moduli, rate and forces there, where it is known how the moduli fall. */
function moduliAtTemperature(steps: Steps, { hot: atTemperature, points }: Design, { modulusLoss }: Material): void {
  if (
    modulusLoss === undefined ||
    atTemperature === null ||
    atTemperature.shearModulus === null ||
    atTemperature.youngsModulus === null ||
    atTemperature.rate === null
  ) {
    steps.note("How the moduli of this material fall is not known, so forces when hot are not known.");
    return;
  }
  steps.given(["v", "modulusLoss", "loss of modulus for each kelvin"], "number", modulusLoss.perKelvin, modulusLoss.source);
  const rise = steps.units.length === "mm" ? "(t - 20)" : "(t - 68) * 5 / 9";
  steps.derived(
    ["Gh", "shearModulusHot", "shear modulus hot"],
    "stress",
    `G * (1 - v * ${rise})`,
    modulusLoss.source,
    atTemperature.shearModulus,
  );
  steps.derived(
    ["Eh", "youngsModulusHot", "Young's modulus hot"],
    "stress",
    `E * (1 - v * ${rise})`,
    modulusLoss.source,
    atTemperature.youngsModulus,
  );
  steps.derived(
    ["kh", "springRateHot", "rate hot"],
    "rate",
    "Gh * d^4 / (8 * D^3 * Na)",
    "Shigley eq. 10-9; EN 13906-1",
    atTemperature.rate,
  );
  for (const [i, { name }] of points.entries()) {
    const called = [`Fh${i + 1}`, `forceHotAtPoint${i + 1}`, `force hot, ${name}`] as const;
    steps.derived(called, "force", `kh * s${i + 1}`, "rate", atTemperature.forces[i] as number);
  }
}
