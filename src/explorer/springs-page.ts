import type { MeritName } from "../model.ts";
import { massSentence } from "../report/charts/mass.ts";
import type { ColourFigure } from "../report/charts/scatter.ts";
import type { PageData, PageSource } from "../report/page/page-data.ts";
import type { ChartName } from "../report/page/springs-page.ts";
import { exportChart } from "./charts/export-chart.ts";
import { linkCharts, type Themed } from "./charts/linked-charts.ts";
import { startSweepViews } from "./charts/sweep-views.ts";
import type { AxisHandles } from "./controls/axis-handles.ts";
import { startControls } from "./controls/controls.ts";
import { runPanel } from "./controls/run-panel.ts";
import { drawWhenVisible } from "./parts/draw-when-visible.ts";
import { byId, jsonBlock } from "./parts/element.ts";
import { wirePaper } from "./parts/sheet-dialog.ts";
import { showSections } from "./sections.ts";
import { serveRequests } from "./session/engine.ts";
import { startRunner } from "./session/runner.ts";
import { openSession, type Session } from "./session/session.ts";
import { isSameSpring, type Spring, shownOf } from "./session/springs.ts";
import { nameChosen, placeWords, showChosen } from "./spring/chosen.ts";
import { Beside } from "./spring/comparison.ts";
import { listedWords, markPointed, showRanked } from "./spring/ranked.ts";

type Charts = Readonly<Record<ChartName, Themed>>;

/** Wire a page of single springs together: what is changed is swept again, and every view shows the newest run. */
function startSprings(data: PageData, source: PageSource, charts: Charts, script: string): Session {
  const session = openSession({
    source,
    shown: shownOf(data, data.brief.units),
    start: (answer) => {
      const { wires, materials, ends } = data.brief.sweep;
      const setup = { file: source.file, options: source.options, carried: { wires, materials, ends } };
      const asked = { id: 0, text: source.text, axes: data.frontAxes };
      return startRunner({ setup, asked, script, answer });
    },
  });
  // The session, for who scripts the page from outside.
  Object.assign(byId("run"), { session });
  wirePaper();
  runPanel(byId("run"), session, source);
  // The chart stays in sight with nothing in it: the handles that lead back stand on its axes.
  byId("springs").hidden = false;
  let controls: AxisHandles | null = null;
  const sweepViews = startSweepViews(session, charts);
  const springs = springViews(session, charts, {
    beforeDrawn: () => controls?.aim(),
    onDrawn: () => controls?.follow(),
    onWire: sweepViews.chooseWire,
  });
  controls = startControls(session);
  let { shown } = session;
  session.listen(() => {
    if (session.shown !== shown) {
      shown = session.shown;
      showSections(shown);
      springs.follow();
    }
    sweepViews.follow();
    controls?.follow();
  });
  return session;
}

/** Whom the views of springs tell. */
interface SpringsListener {
  readonly beforeDrawn: () => void;
  readonly onDrawn: () => void;
  /** A spring of this wire diameter, m, is chosen. */
  readonly onWire: (diameter: number) => void;
}

/** The chosen spring, both charts and the ranked table show the same springs. */
function springViews(
  session: Session,
  charts: Pick<Charts, "scatter" | "mass">,
  { beforeDrawn, onDrawn, onWire }: SpringsListener,
): { readonly follow: () => void } {
  const colour = byId("colour-by") as HTMLSelectElement;
  let { springs, brief } = session.shown;
  let byPlace = new Map<number, Spring>();
  let chosen: Spring | undefined;
  let inside: readonly Spring[] | null = null;

  const read = () => {
    ({ springs, brief } = session.shown);
    byPlace = new Map(springs.map((spring) => [spring.id, spring]));
  };
  const list = () => {
    const ranked = { springs, inside: inside ?? springs, brushed: inside !== null, chosen: chosen?.id ?? -1 };
    byId("listed").textContent = springs.length > 0 ? listedWords(ranked) : "";
    for (const part of [byId("ranked"), byId("chosen-link")]) (part.parentElement as HTMLElement).hidden = springs.length === 0;
    showRanked(byId("ranked"), ranked, brief, choose, point);
    byId("take-springs").replaceChildren(...(springs.length > 0 ? [exportLine()] : []));
  };
  const exportLine = () =>
    exportChart({
      brief,
      spec: charts.scatter.light,
      colour: colour.value as ColourFigure,
      scattered: linked.scattered,
      feasible: session.shown.result.feasible,
      inside: inside ?? springs,
      brushed: inside !== null,
    });
  const showSpring = () => chosen && showChosen(byId("chosen-spring"), chosen, brief, beside);
  const followSpring = drawWhenVisible(byId("chosen-spring"), showSpring);
  const point = (id: number | null) => {
    linked.point(id);
    markPointed(byId("ranked"), id);
  };
  const choose = (id: number) => {
    chosen = byPlace.get(id);
    linked.choose(id);
    tell();
    showSpring();
  };
  const tell = (note = "") => {
    session.keep(chosen);
    if (chosen === undefined) return list();
    nameChosen(byId("chosen-name"), chosen.design);
    byId("chosen-name").append(note);
    byId("chosen-link").textContent = placeWords(chosen.design);
    onWire(chosen.design.wireDiameter);
    list();
  };
  const drawn = () => {
    const { result, front, frontDrawn } = session.shown;
    return { springs, front, frontDrawn, axes: result.frontAxes, brief };
  };
  const sayMass = () => {
    byId("mass-words").textContent = massSentence(
      springs.map((spring) => spring.drawn),
      brief,
    );
  };

  read();
  chosen = springs[0];
  const beside = new Beside(byId("beside"), byId("kept-springs"), brief, showSpring);
  const followBeside = drawWhenVisible(byId("beside"), () => beside.show(brief));
  const linked = linkCharts({ scatter: byId("chart"), mass: byId("mass-chart") }, charts, drawn(), colour.value, {
    beforeDrawn,
    onDrawn,
    onBrush: (next) => {
      inside = next;
      list();
    },
    onChoose: choose,
    onPoint: point,
  });
  linked.choose(chosen?.id ?? null);
  sayMass();
  tell();
  showSpring();
  wireAxes(session.axes, (axes) => session.useAxes(axes));
  colour.addEventListener("change", () => {
    linked.colourBy(colour.value);
    list();
  });
  window.addEventListener("resize", () => {
    followSpring();
    followBeside();
  });

  return {
    follow: () => {
      const before = chosen;
      read();
      const same = before && springs.find((spring) => isSameSpring(spring, before));
      const isLost = before !== undefined && same === undefined && springs.length > 0;
      chosen = same ?? springs[0];
      linked.show(drawn(), chosen?.id ?? null);
      inside = linked.inside();
      sayMass();
      followBeside();
      tell(isLost ? ". The spring that was chosen fits no more; the best is shown" : "");
      followSpring();
    },
  };
}

type Axes = readonly [MeritName, MeritName];

/** Let a reader choose the figures across and up; a figure that stands on the other axis changes places with it. */
function wireAxes(first: Axes, onChange: (axes: Axes) => void): void {
  const selects = ["axis-across", "axis-up"].map((id) => byId(id) as HTMLSelectElement) as [HTMLSelectElement, HTMLSelectElement];
  let axes = first;
  const write = () =>
    selects.forEach((select, i) => {
      select.value = axes[i] as MeritName;
    });
  selects.forEach((select, i) => {
    select.addEventListener("change", () => {
      const name = select.value as MeritName;
      const other = axes[1 - i] as MeritName;
      const rest = other === name ? (axes[i] as MeritName) : other;
      axes = i === 0 ? [name, rest] : [rest, name];
      write();
      onChange(axes);
    });
  });
  write();
}

/** The same script is the page's and its worker's, so that the page carries the sweep once. */
if (typeof document === "undefined") serveRequests();
else startPage(document.currentScript?.textContent ?? "");

function startPage(script: string): void {
  const data = jsonBlock<PageData>("page-data") as PageData;
  const source = jsonBlock<PageSource>("page-source") as PageSource;
  startSprings(data, source, jsonBlock<Readonly<Record<ChartName, Themed>>>("page-charts") as Record<ChartName, Themed>, script);
  document.body.dataset.ready = "yes";
}
