import { walkedSentence } from "../../report/funnel.ts";
import { byId, element } from "../element.ts";
import type { Session } from "../session.ts";
import { type AxisHandles, axisHandles, type ChartHost } from "./axis-handles.ts";
import { legendRow } from "./legend-row.ts";
import { limitRows } from "./limit-rows.ts";
import { unitsSwitch } from "./units-switch.ts";

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
