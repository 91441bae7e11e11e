import type { Spec } from "vega";
import { type ColourFigure, chartRow, type Theme } from "../report/charts.ts";
import type { PageData } from "../report/page-data.ts";
import { Beside } from "./beside.ts";
import { type Brushed, type Chart, drawChart, NO_BRUSH } from "./chart.ts";
import { nameChosen, placeWords, showChosen } from "./chosen.ts";
import { byId } from "./element.ts";
import { wirePaper } from "./paper.ts";
import { listedWords, showRanked } from "./ranked.ts";
import { type Spring, springsOf } from "./springs.ts";
import { takeChart } from "./take-chart.ts";

/** Wire a page of single springs together: the chosen spring, the scatter and the ranked table show the same springs. */
export function startSprings(data: PageData, specs: Readonly<Record<Theme, Spec>>): void {
  const { brief, frontAxes } = data;
  const springs = springsOf(data);
  const rowOf = ({ design, id }: Spring) => chartRow(design, id, brief.units, frontAxes);
  const rows = springs.map(rowOf);
  const byPlace = new Map(springs.map((spring) => [spring.id, spring]));
  const front = data.front.map((id) => rowOf(byPlace.get(id) as Spring));
  const colour = byId("colour-by") as HTMLSelectElement;
  const dark = window.matchMedia("(prefers-color-scheme: dark)");

  let chosen = springs[0] as Spring;
  let brushed: Brushed = null;
  let chart: Chart | null = null;

  const takeSprings = (inside: readonly Spring[]) => {
    const designs = { count: inside.length, inside: () => inside.map(({ design }) => design), brushed: brushed !== null };
    const chart = { brief, spec: specs.light, colour: colour.value as ColourFigure, rows, front, feasible: data.feasible };
    byId("take-springs").replaceChildren(takeChart({ ...chart, ...designs }));
  };
  const list = () => {
    const inside = springs.filter(
      (_, i) => !brushed || Object.entries(brushed).every(([name, span]) => within(rows[i]?.[name], span)),
    );
    const ranked = { springs, inside, brushed: brushed !== null, chosen: chosen.id };
    byId("listed").textContent = listedWords(ranked);
    showRanked(byId("ranked"), ranked, brief, choose);
    takeSprings(inside);
  };
  const showSpring = () => showChosen(byId("chosen-spring"), chosen.design, brief, beside);
  const beside = new Beside(byId("beside"), byId("kept-springs"), brief, showSpring);
  const choose = (id: number) => {
    chosen = byPlace.get(id) as Spring;
    nameChosen(byId("chosen-name"), chosen.design);
    showSpring();
    byId("chosen-link").textContent = placeWords(chosen.design);
    chart?.choose(rowOf(chosen));
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
      front,
      brush,
      onBrush: (next) => {
        brushed = next;
        list();
      },
      onChoose: choose,
    });
    chart.colourBy(colour.value);
    choose(chosen.id);
  };
  const onScreen = () => draw(dark.matches ? "dark" : "light");

  wirePaper();
  onScreen();
  colour.addEventListener("change", () => {
    chart?.colourBy(colour.value);
    list();
  });
  dark.addEventListener("change", onScreen);
  window.addEventListener("resize", () => {
    showSpring();
    beside.show();
  });
  // Paper is light whatever the screen is; only a dark chart needs drawing anew.
  window.addEventListener("beforeprint", () => dark.matches && draw("light"));
  window.addEventListener("afterprint", () => dark.matches && draw("dark"));
}

function within(value: number | string | undefined, [a, b]: readonly [number, number]): boolean {
  return typeof value === "number" && value >= Math.min(a, b) && value <= Math.max(a, b);
}
