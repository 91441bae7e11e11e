import type { Brief, Design } from "../model.ts";
import { show } from "../units/show.ts";
import { type Field, fieldList, sheetPart } from "./sheet-fields.ts";

/**
 * How the spring is used: seats and guides, stroke, cycles, temperature.
 *
 * @param brief   the brief that the spring answers
 * @param design  the spring
 * @returns markup; what the brief does not state is a line to fill in
 */
export function servicePart(brief: Brief, design: Design): string {
  const { units, service, envelope, defaults } = brief;
  const { cycles, frequency, temperature } = service;
  const length = (value: number | undefined) => (value === undefined ? undefined : show(value, "length", units));
  const isSeatTaken = defaults.some(({ key }) => key === "service.seats");
  return sheetPart(
    "service",
    "Service",
    fieldList([
      { label: "Works in a bore of", text: length(envelope.bore) },
      { label: "Works over a rod of", text: length(envelope.rod) },
      isSeatTaken ? { label: "Seats", note: `judged ${service.seats}` } : { label: "Seats", text: seatWords(service) },
      strokeField(brief, design),
      cycles === undefined
        ? { label: "Load cycles", note: "judged static" }
        : { label: "Load cycles", text: cycles.toLocaleString("en-US") },
      { label: "Frequency", text: frequency === undefined ? undefined : show(frequency, "frequency", units) },
      ...cyclicFields(brief, design),
      { label: "Temperature", text: temperature === undefined ? undefined : `up to ${show(temperature, "temperature", units)}` },
      { label: "Loss of load allowed" },
    ]),
  );
}

function seatWords({ seats, farEnd }: Brief["service"]): string {
  return farEnd === undefined ? seats : `${seats}, far end ${farEnd === "free" ? "on no seat" : farEnd}`;
}

/** Between the least and the greatest deflection of the load points; one point alone says nothing of a stroke. */
function strokeField({ units }: Brief, { points }: Design): Field {
  const deflections = points.map(({ deflection }) => deflection);
  const stroke = Math.max(...deflections) - Math.min(...deflections);
  return { label: "Stroke", text: points.length > 1 ? show(stroke, "length", units) : undefined };
}

function cyclicFields({ units }: Brief, { cyclic }: Design): Field[] {
  if (cyclic === null) return [];
  const [amplitude, mean] = [cyclic.stressAmplitude, cyclic.meanStress].map((stress) => show(stress, "stress", units));
  return [{ label: "Shear stress", text: `${mean} ± ${amplitude}`, note: "corrected" }];
}
