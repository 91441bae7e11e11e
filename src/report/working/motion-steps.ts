import { massFactor, swingFactor, times } from "./sheet-units.ts";
import type { Steps } from "./steps.ts";
import { briefSource, type Subject } from "./subject.ts";

const BUCKLING = "Shigley eq. 10-10; EN 13906-1 clause 9.14";

/** The deflection at which the spring bows sideways, and its lowest natural frequency. */
export function motionSteps(steps: Steps, subject: Subject): void {
  const { candidate, asks, brief } = subject;
  steps.chapter("Buckling");
  if (brief.service.seats === "guided") steps.note("The spring is guided: it is not judged for buckling.");
  else {
    const seats = `fixity, ${brief.service.seats} (${briefSource(brief, "service.seats")})`;
    steps.given(["ν", "fixity", seats], "number", asks.fixity, asks.practice.fixity.source);
    steps.derived(["λ", "slenderness", "slenderness"], "number", "ν * L0 / D", BUCKLING);
    steps.derived(["c1", "bucklingConstant1", "elastic constant 1"], "number", "E / (2 * (E - G))", BUCKLING);
    steps.derived(["c2", "bucklingConstant2", "elastic constant 2"], "number", "2 * pi^2 * (E - G) / (2 * G + E)", BUCKLING);
    const radicand = "what the root is taken of; below zero the spring is stable at every deflection";
    steps.derived(["z", "bucklingRadicand", radicand], "number", "1 - c2 / λ^2", BUCKLING);
    const buckles = ["yb", "bucklingDeflection", "buckles at a deflection of"] as const;
    steps.derived(buckles, "length", "L0 * c1 * (1 - sqrt(z))", BUCKLING, candidate.bucklingDeflection, "z");
  }
  steps.chapter("Surge");
  const { units } = steps;
  const { farEnd } = brief.service;
  if (farEnd !== undefined)
    steps.note(`The far end is ${farEnd === "free" ? "on no seat" : farEnd} (${briefSource(brief, "service.farEnd")}).`);
  const swinging = `${times(massFactor(units))}ρ * pi / 4 * d^2 * pi * D * Na`;
  steps.derived(["ma", "activeMass", "mass of the active turns"], "mass", swinging, "Shigley eq. 10-22");
  const frequency = `1 / ${asks.endFree ? 4 : 2} * sqrt(${times(swingFactor(units))}k / ma)`;
  const source = asks.endFree ? "Shigley eq. 10-26, from memory: one end free" : "Shigley eq. 10-25; EN 13906-1 clause 9.12";
  steps.derived(["fn", "surgeFrequency", "lowest natural frequency"], "frequency", frequency, source, candidate.surgeFrequency);
}
