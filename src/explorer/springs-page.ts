import type { ColourFigure } from "../report/charts.ts";
import { massSentence } from "../report/mass-words.ts";
import type { ChartName } from "../report/page.ts";
import type { PageData, PageSource } from "../report/page-data.ts";
import { wireAxes } from "./axes-choice.ts";
import { Beside } from "./beside.ts";
import { nameChosen, placeWords, showChosen } from "./chosen.ts";
import type { AxisHandles } from "./controls/axis-handles.ts";
import { startControls } from "./controls/controls.ts";
import { byId } from "./element.ts";
import { drawnInSight } from "./in-sight.ts";
import { linkCharts, type Themed } from "./linked-charts.ts";
import { wirePaper } from "./paper.ts";
import { listedWords, markPointed, showRanked } from "./ranked.ts";
import { runPanel } from "./run-panel.ts";
import { startRunner } from "./runner.ts";
import { showSections } from "./sections.ts";
import { openSession, type Session } from "./session.ts";
import { isSameSpring, type Spring, shownOf } from "./springs.ts";
import { startSweepViews } from "./sweep-views.ts";
import { takeChart } from "./take-chart.ts";

type Charts = Readonly<Record<ChartName, Themed>>;

/** Wire a page of single springs together: what is changed is swept again, and every view shows the newest run. */
export function startSprings(data: PageData, source: PageSource, charts: Charts, script: string): Session {
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
    byId("take-springs").replaceChildren(...(springs.length > 0 ? [takeLine()] : []));
  };
  const takeLine = () =>
    takeChart({
      brief,
      spec: charts.scatter.light,
      colour: colour.value as ColourFigure,
      scattered: linked.scattered,
      feasible: session.shown.result.feasible,
      inside: inside ?? springs,
      brushed: inside !== null,
    });
  const showSpring = () => chosen && showChosen(byId("chosen-spring"), chosen, brief, beside);
  const followSpring = drawnInSight(byId("chosen-spring"), showSpring);
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
  const followBeside = drawnInSight(byId("beside"), () => beside.show(brief));
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
