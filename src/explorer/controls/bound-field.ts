import type { Units } from "../../model.ts";
import { keyWords } from "../../report/text/key-labels.ts";
import { inUnits } from "../../units/show.ts";
import { element } from "../parts/element.ts";
import type { Session } from "../session/session.ts";
import { fieldText, isSettled, leadingNumber, movedBy, quantityText, settledText, type Travel, travelOf } from "./bound-steps.ts";
import type { Bound } from "./bounds.ts";

/** One bound on its row: a field with the exact value, a small slider, and what is to be said of it. */
export interface BoundField {
  readonly host: HTMLElement;
  /** Show what the session now holds. */
  readonly follow: (bound: Bound) => void;
}

/** How far a key of the keyboard moves a value, in steps. */
export const KEY_STEPS: Readonly<Record<string, number>> = {
  ArrowUp: 1,
  ArrowRight: 1,
  ArrowDown: -1,
  ArrowLeft: -1,
  PageUp: 10,
  PageDown: -10,
};

/**
 * A field for one bound of the brief. What is typed goes into the brief as it is, and its reader answers; an empty field takes the
 * bound out.
 */
export function boundField(first: Bound, session: Session): BoundField {
  const { key } = first;
  const id = `bound-${key.replaceAll(".", "-")}`;
  const name = keyWords(key, session.shown.brief);
  const input = element("input", {
    attributes: { type: "text", id, role: "spinbutton", autocomplete: "off", spellcheck: "false", "aria-label": name },
  });
  // The field beside it takes the same steps from a keyboard, so that one bound is one stop of the tabulator.
  const slider = element("input", {
    class: "screen-only",
    attributes: { type: "range", tabindex: "-1", "aria-label": `${name}, slider` },
  });
  const error = element("p", { class: "bound-error", attributes: { id: `${id}-error`, hidden: "" } });
  const said = element("span", { attributes: { id: `${id}-said` } });
  const back = element("button", { class: "screen-only", text: "put back", attributes: { type: "button" } });
  back.setAttribute("aria-label", `put back ${name}`);
  const note = element("p", { class: "bound-note" }, [said, back]);
  const label = element("label", { text: first.label, attributes: { for: id } });
  const host = element("div", { class: "bound" }, [label, input, slider, note, error]);

  let bound = first;
  let shown = "";
  let travel: Travel | null = null;
  let units: Units = session.units;
  // What was put here last may be refused at another key, as a bore is that leaves no room for the rod.
  let isBlamed = false;

  const send = (text: string | undefined) => {
    isBlamed = true;
    session.put(key, text);
  };
  const put = (number: number) => {
    const least = bound.mayBeZero ? 0 : (travel?.step ?? 0);
    send(quantityText(Math.max(least, number), bound.dimension, session.units));
  };
  const commit = () => {
    const text = input.value.trim();
    if (text !== shown.trim()) send(text === "" ? undefined : text);
  };
  input.addEventListener("change", commit);
  input.addEventListener("keydown", (event) => {
    if (event.key === "Enter") commit();
    if (event.key === "Escape") {
      input.value = shown;
      // What was refused gives way to what the last good run was made with.
      if (!isSettled(key, session)) session.put(key, settledText(key, session));
    }
    const steps = event.key === "ArrowLeft" || event.key === "ArrowRight" ? undefined : KEY_STEPS[event.key];
    const number = leadingNumber(input.value);
    if (steps === undefined || number === undefined || travel === null) return;
    event.preventDefault();
    put(movedBy(number, steps, travel.step));
  });
  slider.addEventListener("input", () => put(Number(slider.value)));
  back.addEventListener("click", () => {
    session.putBack(key);
    input.focus();
  });

  return {
    host,
    follow: (next) => {
      const moved = units.length !== session.units.length || units.force !== session.units.force;
      bound = next;
      units = session.units;
      const written = session.textAt(key);
      // Between a change and its run, and where that cannot be made, the text is ahead of the value.
      const ahead = session.busy || session.problems.length > 0;
      const text = isSettled(key, session) ? fieldText(bound, written, units) : (written ?? "");
      if (text !== shown || document.activeElement !== input) input.value = text;
      shown = text;
      input.size = Math.max(8, text.length);
      input.placeholder = absentWords(bound, session);
      const number = leadingNumber(text);
      follow(input, number, text);

      const value = bound.value === undefined ? undefined : inUnits(bound.value, bound.dimension, units);
      if (bound.value === undefined) travel = null;
      else if (travel === null || moved || outside(value, travel)) travel = travelOf(bound, units);
      slider.hidden = travel === null;
      if (travel !== null) {
        slider.min = String(travel.low);
        slider.max = String(travel.high);
        slider.step = String(travel.step);
        if (document.activeElement !== slider || !ahead) slider.value = String(value);
        slider.setAttribute("aria-valuetext", text);
      }

      if (!ahead) isBlamed = false;
      const refused = isBlamed && session.problems.length > 0 ? session.problems.join(" ") : undefined;
      const problem = session.problemAt(key) ?? refused;
      error.hidden = problem === undefined;
      error.textContent = problem ?? "";
      if (problem === undefined) input.removeAttribute("aria-invalid");
      else input.setAttribute("aria-invalid", "true");
      said.textContent = noteWords(bound, session);
      back.hidden = !session.isChanged(key);
      host.classList.toggle("changed", session.isChanged(key));
      input.setAttribute("aria-describedby", problem === undefined ? said.id : `${error.id} ${said.id}`);
    },
  };
}

function follow(input: HTMLElement, number: number | undefined, text: string): void {
  if (number === undefined) {
    input.removeAttribute("aria-valuenow");
    input.removeAttribute("aria-valuetext");
  } else {
    input.setAttribute("aria-valuenow", String(number));
    input.setAttribute("aria-valuetext", text);
  }
}

function outside(value: number | undefined, { low, high }: Travel): boolean {
  return value !== undefined && (value < low || value > high);
}

/** What an empty field stands for. */
function absentWords({ limit, key }: Bound, { shown }: Session): string {
  const { limits } = shown.brief;
  if (limit === "clash" && limits.clash !== "off") return "by formula";
  return key.startsWith("limits.") ? "off" : "none";
}

/** What is said of a bound: that it is changed, and from what, or that it is not the brief's own. */
function noteWords(bound: Bound, session: Session): string {
  const { key, value } = bound;
  const { defaults } = session.shown.brief;
  const taken = defaults.find((one) => key === one.key || key.startsWith(`${one.key}.`));
  if (session.isChanged(key)) return `changed, asked: ${session.askedAt(key) ?? "nothing"} `;
  if (taken === undefined || value === undefined) return "";
  return taken.source === "none unless asked" ? taken.source : `from the practice: ${taken.source}`;
}
