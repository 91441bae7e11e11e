import { omitUndefined } from "../../document/omit-undefined.ts";
import type { FreeParameter, Order } from "../../model.ts";
import { exactQuantity } from "../quantities.ts";
import type { Section } from "../section.ts";

/** Longest texts, characters: the data sheet is one page. */
const longest = { finish: 60, drawing: 30, notes: 200 } as const;

/**
 * The section `order` -> what the data sheet tells the maker; a key left out stays out. What is wrong is noted as
 * `unknownWord`, `twice`, `range`, `notWhole`, `tooLong` or `wrongKind`.
 */
export function readOrder(order: Section): Order {
  return omitUndefined<Order>({
    hand: order.word<NonNullable<Order["hand"]>>("hand"),
    governing: order.word<NonNullable<Order["governing"]>>("governing"),
    free: order.words<FreeParameter>("free"),
    quantity: readCount(order),
    finish: readText(order, "finish"),
    drawing: readText(order, "drawing"),
    notes: readText(order, "notes"),
  });
}

function readCount(order: Section): number | undefined {
  const quantity = exactQuantity(order, "quantity");
  if (quantity === undefined || Number.isSafeInteger(quantity)) return quantity;
  return order.problem(
    "quantity",
    "notWhole",
    `${order.scalar("quantity")} is no whole number`,
    "write how many springs, such as 500",
  );
}

function readText(order: Section, name: keyof typeof longest): string | undefined {
  const text = order.scalar(name);
  const most = longest[name];
  if (text === undefined || text.length <= most) return text;
  const want = `write at most ${most}, for the data sheet is one page`;
  return order.problem(name, "tooLong", `has ${text.length} characters`, want);
}
