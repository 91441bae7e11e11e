import type { DesignPoint } from "../../model.ts";
import { massFactor, type Steps, swingFactor, times } from "./steps.ts";
import { briefSource, STRESS_SOURCE, stressEquation, type WorkedSpring } from "./worked-spring.ts";

/** Deflection, force and stress at each point, at the largest working deflection, and pressed solid. */
export function loadSteps(steps: Steps, worked: WorkedSpring): void {
  const { design, candidate, requirements } = worked;
  steps.chapter("Load points");
  for (const [i, point] of design.points.entries()) pointSteps(steps, worked, point, i + 1);
  steps.chapter("Largest work and solid");
  steps.derived(["Fw", "workingForce", "largest working force"], "force", "k * y", "rate", candidate.workingForce);
  const atWork = candidate.stress(candidate.workingForce, requirements.stressFactor);
  const work = ["τw", "workingStress", "shear stress at it"] as const;
  steps.derived(work, "stress", stressEquation("Fw", requirements.stressFactor), STRESS_SOURCE, atWork);
  const safety = ["nw", "workingSafety", "working safety"] as const;
  if (candidate.workingForce > 0) steps.derived(safety, "number", "τall / τw", "allowable over actual", design.workingSafety);
  steps.derived(["ss", "solidDeflection", "deflection to solid"], "length", "L0 - Ls", "geometry");
  steps.derived(["Fs", "forceAtSolid", "force at solid"], "force", "k * ss", "rate", design.forceAtSolid);
  const solid = stressEquation("Fs", requirements.stressFactor);
  steps.derived(["τs", "stressAtSolid", "shear stress at solid"], "stress", solid, STRESS_SOURCE, design.stressAtSolid);
  steps.derived(["ns", "solidSafety", "safety at solid"], "number", "τall / τs", "allowable over actual", design.solidSafety);
  grownDiameter(steps, worked);
}

function pointSteps(steps: Steps, { requirements }: WorkedSpring, point: DesignPoint, number: number): void {
  const { name, length, deflection, force, stress, shareOfDeflection } = point;
  const L = `L${number}`;
  const s = `s${number}`;
  const F = `F${number}`;
  const fromLength = steps.has(L);
  if (!fromLength) steps.derived([L, `lengthAtPoint${number}`, `length, ${name}`], "length", "L0 - y", "geometry", length);
  steps.derived([s, `deflectionAtPoint${number}`, `deflection, ${name}`], "length", `L0 - ${L}`, "geometry", deflection);
  steps.derived([F, `forceAtPoint${number}`, `force, ${name}`], "force", `max(0, k * ${s})`, "rate", force);
  const equation = stressEquation(F, requirements.pointFactor);
  steps.derived([`τ${number}`, `stressAtPoint${number}`, `shear stress, ${name}`], "stress", equation, STRESS_SOURCE, stress);
  const called = [`u${number}`, `travelAtPoint${number}`, `share of the deflection to solid, ${name}`] as const;
  steps.derived(called, "number", `${s} / (L0 - Ls)`, "geometry", shareOfDeflection);
}

function grownDiameter(steps: Steps, { requirements, candidate, ends, design }: WorkedSpring): void {
  const grown = ["Ds", "outsideDiameterAtSolid", "outside diameter at solid"] as const;
  const engine = design.outsideDiameterAtSolid;
  if (requirements.practice.name === "handbook") {
    const source = "Associated Spring, Design Handbook, from memory";
    steps.derived(grown, "length", "sqrt(D^2 + (p^2 - d^2) / pi^2) + d", source, engine);
    return;
  }
  const source = "EN 13906-1 clause 9.11, from memory";
  steps.given(["w", "growthWires", `wires that take no pitch there, ${ends.name} ends`], "number", ends.ground ? 1 : 2.5, source);
  steps.derived(["pm", "growthPitch", "pitch that the standard takes"], "length", "(L0 - w * d) / Na", source);
  steps.derived(["ΔD", "diameterGrowth", "growth"], "length", "0.1 * (pm^2 - 0.8 * pm * d - 0.2 * d^2) / D", source);
  steps.derived(grown, "length", "D + d + ΔD", source, candidate.outsideDiameterAtSolid);
}

const BUCKLING = "Shigley eq. 10-10; EN 13906-1 clause 9.14";

/** The deflection at which the spring bows sideways, and its lowest natural frequency. */
export function motionSteps(steps: Steps, worked: WorkedSpring): void {
  const { candidate, requirements, brief } = worked;
  steps.chapter("Buckling");
  if (brief.service.seats === "guided") steps.note("The spring is guided: it is not judged for buckling.");
  else {
    const seats = `fixity, ${brief.service.seats} (${briefSource(brief, "service.seats")})`;
    steps.given(["ν", "fixity", seats], "number", requirements.fixity, requirements.practice.fixity.source);
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
  const frequency = `1 / ${requirements.endFree ? 4 : 2} * sqrt(${times(swingFactor(units))}k / ma)`;
  const source = requirements.endFree
    ? "Shigley eq. 10-26, from memory: one end free"
    : "Shigley eq. 10-25; EN 13906-1 clause 9.12";
  steps.derived(["fn", "surgeFrequency", "lowest natural frequency"], "frequency", frequency, source, candidate.surgeFrequency);
}
