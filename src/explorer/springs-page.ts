import type { MeritName } from "../model.ts";
import { massSentence } from "../report/mass-words.ts";
import { frontSentence, type PageData } from "../report/page-data.ts";
import { wireAxes } from "./axes-choice.ts";
import { nameChosen, placeWords, showChosen } from "./chosen.ts";
import { drawnFront } from "./drawn-front.ts";
import { byId } from "./element.ts";
import { type Drawn, linkCharts, type Themed } from "./linked-charts.ts";
import { wirePaper } from "./paper.ts";
import { listedWords, markPointed, showRanked } from "./ranked.ts";
import { type Spring, springsOf } from "./springs.ts";

/**
 * Wire a page of single springs together: the chosen spring, both charts and the ranked table show the same springs.
 *
 * @param onWire  is told of the wire diameter, m, of each spring that is chosen
 */
export function startSprings(data: PageData, scatter: Themed, mass: Themed, onWire: (diameter: number) => void): void {
  const { brief, feasible, frontAxes } = data;
  const { units } = brief;
  const springs = springsOf(data);
  const byPlace = new Map(springs.map((spring) => [spring.id, spring]));
  const colour = byId("colour-by") as HTMLSelectElement;

  let chosen = springs[0] as Spring;
  let inside: readonly Spring[] | null = null;

  const list = () => {
    const ranked = { springs, inside: inside ?? springs, brushed: inside !== null, chosen: chosen.id };
    byId("listed").textContent = listedWords(ranked);
    showRanked(byId("ranked"), ranked, brief, choose, point);
  };
  const point = (id: number | null) => {
    charts.point(id);
    markPointed(byId("ranked"), id);
  };
  const choose = (id: number) => {
    chosen = byPlace.get(id) as Spring;
    nameChosen(byId("chosen-name"), chosen.design);
    showChosen(byId("chosen-spring"), chosen.design, brief);
    byId("chosen-link").textContent = placeWords(chosen.design);
    charts.choose(id);
    onWire(chosen.design.wireDiameter);
    list();
  };
  const drawnOn = (axes: readonly [MeritName, MeritName]): Drawn => {
    const isSwept = axes.join() === frontAxes.join();
    const front = isSwept ? data.front : drawnFront(springs, axes);
    byId("front-words").textContent = frontSentence(isSwept || springs.length >= feasible);
    return { springs, front, axes, units };
  };

  const charts = linkCharts(
    { scatter: byId("chart"), mass: byId("mass-chart") },
    { scatter, mass },
    drawnOn(frontAxes),
    colour.value,
    {
      onBrush: (next) => {
        inside = next;
        list();
      },
      onChoose: choose,
      onPoint: point,
    },
  );
  byId("mass-words").textContent = massSentence(
    springs.map(({ design }) => design),
    brief,
  );
  wirePaper();
  wireAxes(frontAxes, (axes) => charts.show(drawnOn(axes)));
  choose(chosen.id);
  colour.addEventListener("change", () => charts.colourBy(colour.value));
  window.addEventListener("resize", () => showChosen(byId("chosen-spring"), chosen.design, brief));
}
