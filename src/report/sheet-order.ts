import type { Brief, FreeParameter, Order } from "../model.ts";
import { choices, type Field, fieldList, sheetPart } from "./sheet-fields.ts";

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
