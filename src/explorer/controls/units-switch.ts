import type { Brief, Units } from "../../model.ts";
import { element } from "../element.ts";
import type { Session } from "../session.ts";

const METRIC: Units = { length: "mm", force: "N" };
const INCH: Units = { length: "in", force: "lbf" };

/**
 * A quiet switch of the units that are shown: metric, inch, and those of a brief that mixes them. What is asked stays as written.
 *
 * @param asked    the brief as asked
 * @param session  whose units are switched
 */
export function unitsSwitch(asked: Brief, session: Session): HTMLElement {
  const isMixed = ![METRIC, INCH].some((units) => same(units, asked.units));
  const choices = [METRIC, INCH, ...(isMixed ? [asked.units] : [])].map((units) => {
    const input = element("input", { attributes: { type: "radio", name: "units" } });
    input.checked = same(units, session.units);
    input.addEventListener("change", () => input.checked && session.useUnits(units));
    return element("label", {}, [input, element("span", { text: `${units.length}, ${units.force}` })]);
  });
  return element("fieldset", { class: "units screen-only" }, [element("legend", { text: "Units shown" }), ...choices]);
}

function same(a: Units, b: Units): boolean {
  return a.length === b.length && a.force === b.force;
}
