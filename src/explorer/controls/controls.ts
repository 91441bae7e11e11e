import type { Brief, Units } from "../../model.ts";
import { walkedSentence } from "../../report/text/rejections.ts";
import { byId, element } from "../parts/element.ts";
import type { Session } from "../session/session.ts";
import { type AxisHandles, axisHandles, type ChartHost } from "./axis-handles.ts";
import { legendRow } from "./legend-row.ts";
import { limitRows } from "./limit-rows.ts";

/** Quiet after the last change, in ms, before a result is spoken. */
const QUIET = 700;

/** What else on the page speaks when it changes. */
const SPEAKERS = ["listed", "chosen-name"];

/**
 * Put everything that changes the brief into the page: units beside the title, a legend and handles on the chart, a field for each
 * bound among the limits. Called once, when the chart is drawn.
 */
export function startControls(session: Session): AxisHandles {
  // The page opens as it was asked.
  const asked = session.shown.brief;
  const legend = element("div", { class: "legend" });
  const status = element("p", { class: "unseen", attributes: { role: "status" } });
  const chart: ChartHost = byId("chart");
  byId("charts").before(legend);
  document.querySelector("main")?.append(status);
  document.querySelector("h1")?.after(unitsSwitch(asked, session));
  const rows = limitRows(document.querySelector("#funnel > div") as HTMLElement, session);
  const handles = axisHandles(chart, session);
  const parts = [legendRow(legend, asked, session), handles, rows];

  let told = session.shown;
  let timer = 0;
  const follow = () => {
    for (const part of parts) part.follow();
    if (told === session.shown && session.problems.length === 0 && !session.busy) return;
    told = session.shown;
    // A drag runs the sweep many times: only where it ends is worth a word.
    hush(true);
    clearTimeout(timer);
    timer = window.setTimeout(() => {
      hush(false);
      // What is wrong is spoken where it stands.
      if (session.problems.length === 0) status.textContent = walkedSentence(session.shown.result);
    }, QUIET);
  };
  return { ...handles, follow };
}

function hush(isHushed: boolean): void {
  for (const id of SPEAKERS) document.getElementById(id)?.setAttribute("aria-live", isHushed ? "off" : "polite");
}

const METRIC: Units = { length: "mm", force: "N" };
const INCH: Units = { length: "in", force: "lbf" };

/**
 * A quiet switch of the units that are shown: metric, inch, and those of a brief that mixes them. What is asked stays as written.
 *
 * @param asked    the brief as asked
 * @param session  whose units are switched
 */
function unitsSwitch(asked: Brief, session: Session): HTMLElement {
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
