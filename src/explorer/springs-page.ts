import type { Spec } from "vega";
import { axisSignals, type ChartRow, chartRow, pointWords, type Theme } from "../report/charts.ts";
import type { PageData, PageSource } from "../report/page-data.ts";
import { type Brushed, type Chart, drawChart, NO_BRUSH } from "./chart.ts";
import { nameChosen, placeWords, showChosen } from "./chosen.ts";
import type { AxisHandles } from "./controls/axis-handles.ts";
import { startControls } from "./controls/controls.ts";
import { byId } from "./element.ts";
import { wirePaper } from "./paper.ts";
import { listedWords, showRanked } from "./ranked.ts";
import { runPanel } from "./run-panel.ts";
import { startRunner } from "./runner.ts";
import { showSections } from "./sections.ts";
import { openSession, type Session } from "./session.ts";
import { isSameSpring, type Spring, shownOf } from "./springs.ts";

/** Wire a page of single springs together: what is changed is swept again, and every view shows the newest run. */
export function startSprings(data: PageData, source: PageSource, specs: Readonly<Record<Theme, Spec>>, script: string): Session {
  const session = openSession({
    source,
    shown: shownOf(data, data.brief.units),
    start: (answer) => {
      const { wires, materials, ends } = data.brief.sweep;
      const ground = { file: source.file, options: source.options, carried: { wires, materials, ends } };
      const asked = { id: 0, text: source.text, axes: data.frontAxes };
      return startRunner({ ground, asked, script, answer });
    },
  });
  // The session, for who scripts the page from outside.
  Object.assign(byId("run"), { session });
  wirePaper();
  runPanel(byId("run"), session, source);
  // The chart stays in sight with nothing in it: the handles that lead back stand on its axes.
  byId("springs").hidden = false;
  let controls: AxisHandles | null = null;
  const views = springViews(session, specs, {
    prepare: () => controls?.aim(),
    onDrawn: () => controls?.follow(),
  });
  controls = startControls(session);
  let { shown } = session;
  session.listen(() => {
    if (session.shown !== shown) {
      shown = session.shown;
      showSections(shown);
      views.follow();
    }
    controls?.follow();
  });
  return session;
}

/** The chosen spring, the scatter and the ranked table show the same springs. */
function springViews(
  session: Session,
  specs: Readonly<Record<Theme, Spec>>,
  { prepare, onDrawn }: { readonly prepare: () => void; readonly onDrawn: () => void },
): { readonly follow: () => void } {
  const colour = byId("colour-by") as HTMLSelectElement;
  const dark = window.matchMedia("(prefers-color-scheme: dark)");
  let { springs, front, brief, result } = session.shown;
  let byPlace = new Map<number, Spring>();
  let rows: readonly ChartRow[] = [];
  let chosen: Spring | undefined;
  let brushed: Brushed = null;
  let chart: Chart | null = null;

  const rowOf = ({ drawn, id }: Spring) => chartRow(drawn, id, brief.units, result.frontAxes);
  const frontRows = () => front.map((id) => rowOf(byPlace.get(id) as Spring));
  const axesInWords = () => [brief.units.length, brief.units.force, ...result.frontAxes].join(" ");
  const read = () => {
    ({ springs, front, brief, result } = session.shown);
    byPlace = new Map(springs.map((spring) => [spring.id, spring]));
    rows = springs.map(rowOf);
  };
  const list = () => {
    const inside = springs.filter(
      (_, i) => !brushed || Object.entries(brushed).every(([name, span]) => within(rows[i]?.[name], span)),
    );
    const ranked = { springs, inside, brushed: brushed !== null, chosen: chosen?.id ?? -1 };
    byId("listed").textContent = springs.length > 0 ? listedWords(ranked) : "";
    for (const part of [byId("ranked"), byId("chosen-link")]) (part.parentElement as HTMLElement).hidden = springs.length === 0;
    showRanked(byId("ranked"), ranked, brief, (id) => choose(byPlace.get(id)));
  };
  const choose = (spring: Spring | undefined) => {
    chosen = spring;
    if (chosen !== undefined) chart?.choose(rowOf(chosen));
    tell();
  };
  const tell = (note = "") => {
    session.keep(chosen);
    if (chosen === undefined) return list();
    nameChosen(byId("chosen-name"), chosen.design);
    byId("chosen-name").append(note);
    showChosen(byId("chosen-spring"), chosen.design, brief);
    byId("chosen-link").textContent = placeWords(chosen.design);
    list();
  };
  const draw = (theme: Theme) => {
    const brush = chart?.brush() ?? NO_BRUSH;
    chart?.remove();
    chart = drawChart({
      host: byId("chart"),
      tip: byId("tip"),
      spec: specs[theme],
      rows,
      front: frontRows(),
      brush,
      prepare,
      onBrush: (next) => {
        brushed = next;
        list();
      },
      onChoose: (id) => choose(byPlace.get(id)),
      tell: (row) => pointWords(row, result.frontAxes, brief.units),
    });
    chart.head(axisSignals(result.frontAxes, brief.units));
    chart.colourBy(colour.value);
    onDrawn();
  };
  const redraw = (theme: Theme) => {
    draw(theme);
    choose(chosen);
  };
  const onScreen = (): Theme => (dark.matches ? "dark" : "light");

  read();
  chosen = springs[0];
  redraw(onScreen());
  colour.addEventListener("change", () => chart?.colourBy(colour.value));
  dark.addEventListener("change", () => redraw(onScreen()));
  window.addEventListener("resize", () => chosen && showChosen(byId("chosen-spring"), chosen.design, brief));
  // Paper is light whatever the screen is; only a dark chart needs drawing anew.
  window.addEventListener("beforeprint", () => dark.matches && redraw("light"));
  window.addEventListener("afterprint", () => dark.matches && redraw("dark"));

  return {
    follow: () => {
      const before = chosen;
      const measured = axesInWords();
      read();
      // A brush holds numbers of its axes, which mean something else in other units and on other figures.
      if (axesInWords() !== measured) chart?.lift();
      prepare();
      const same = before && springs.find((spring) => isSameSpring(spring, before));
      const isLost = before !== undefined && same === undefined && springs.length > 0;
      chosen = same ?? springs[0];
      chart?.head(axisSignals(result.frontAxes, brief.units));
      chart?.update(rows, frontRows(), chosen && rowOf(chosen));
      tell(isLost ? ". The spring that was chosen fits no more; the best is shown" : "");
    },
  };
}

function within(value: number | string | undefined, [a, b]: readonly [number, number]): boolean {
  return typeof value === "number" && value >= Math.min(a, b) && value <= Math.max(a, b);
}
