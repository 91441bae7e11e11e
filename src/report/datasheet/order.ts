import type { Brief, Design, FreeParameter, Material, Order } from "../../model.ts";
import { show } from "../../units/show.ts";
import { choices, type Field, fieldList, sheetPart } from "./fields.ts";

/**
 * Which wire, by which standard, with which strength.
 *
 * @param brief     the brief that the spring answers
 * @param design    the spring
 * @param material  of its wire
 * @returns markup
 */
export function wirePart({ units }: Brief, design: Design, material: Material): string {
  const stress = (value: number) => show(value, "stress", units);
  return sheetPart(
    "wire",
    "Wire",
    fieldList([
      { label: "Material", text: material.name, note: material.source },
      { label: "Size", text: show(design.wireDiameter, "length", units), note: sizeNote(design, material) },
      { label: "Strength", text: stress(design.tensileStrength), note: design.strengthBasis },
      { label: "Shear modulus", text: stress(design.shearModulus) },
      {
        label: "Mass, length",
        text: `${show(design.mass, "mass", units)}, ${show(design.wireLength, "length", units)}`,
        note: "of wire, one spring",
      },
    ]),
  );
}

/** The size as it is sold, and by whose word its tolerance stands. */
function sizeNote({ wire, series, tolerance: { wireSource } }: Design, { source }: Material): string {
  const sold = `${wire} of ${series}`;
  if (wireSource === null) return sold;
  return `${sold}; tolerance by ${wireSource === source ? "the material's standard" : wireSource}`;
}

const FREE: readonly FreeParameter[] = ["free length", "turns", "wire", "coil diameter"];

/**
 * How the spring is to be made: hand, set, surface, finish, and what the maker may adjust. What the brief does not state is a
 * box or a line to fill in; where the figures rest on something all the same, a note says so.
 *
 * @returns markup
 */
export function makingPart(brief: Brief): string {
  const { service, order = {} } = brief;
  return sheetPart(
    "making",
    "Making",
    fieldList([
      { label: "Hand of coil", choices: choices(["right", "left", "either"], stated(order.hand)) },
      statedOr(brief, "service.set", {
        label: "Set",
        choices: choices(["as wound", "removed"], [service.set]),
        note: service.set === "removed" ? "free length is after set removal" : undefined,
      }),
      statedOr(brief, "service.surface", { label: "Surface", choices: choices(["unpeened", "peened"], [service.surface]) }),
      { label: "Finish", text: order.finish },
      { label: "Ends deburred", choices: choices(["inside", "outside"]) },
      { label: "Diameter held", choices: choices(["outside", "mean", "inside"], stated(order.governing)) },
      { label: "Left free", choices: choices(FREE, order.free) },
    ]),
  );
}

/** Quantity and notes. */
export function orderPart({ order = {} }: Brief): string {
  const quantity = order.quantity?.toLocaleString("en-US");
  return sheetPart(
    "order",
    "Order",
    fieldList([
      { label: "Quantity", text: quantity },
      { label: "Notes", text: order.notes },
    ]),
  );
}

/** Boxes stay empty where the brief is silent; the note tells what the figures rest on. */
function statedOr({ defaults }: Brief, key: string, field: Required<Pick<Field, "label" | "choices">> & Field): Field {
  const taken = defaults.find((one) => one.key === key);
  if (taken === undefined) return field;
  const empty = field.choices.map(({ word }) => ({ word, ticked: false }));
  return { ...field, choices: empty, note: `judged ${taken.text}` };
}

function stated<Word extends string>(word: Word | undefined): readonly Word[] {
  return word === undefined ? [] : [word];
}

/** Number of the drawing, date and name, at the head of the sheet. */
export function headFields({ drawing }: Order = {}): string {
  return fieldList([{ label: "Drawing no.", text: drawing }, { label: "Date" }, { label: "Name" }]);
}

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
