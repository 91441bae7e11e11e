import type { View } from "vega";
import type { RelaxResult, Units, WireFunnel } from "../../model.ts";
import {
  PRICE_ROW,
  relaxationSentence,
  type SensitivityBar,
  sensitivityBars,
  sensitivitySentences,
} from "../../report/charts/sensitivity.ts";
import {
  nearestSize,
  soldSizes,
  type WireField,
  type WireSize,
  wireFields,
  wireSentence,
  wireSizes,
  wiresHeight,
  wiresSentence,
} from "../../report/charts/wires.ts";
import { wiresMarkup } from "../../report/page/sections.ts";
import { figureWithValue } from "../../report/text/labels.ts";
import { relaxedEndsText } from "../../report/text/material-data.ts";
import { countWords, percentText } from "../../report/text/rejections.ts";
import { gainTitle, percentWords, RELAXING } from "../../report/text/relaxation.ts";
import { drawWhenVisible } from "../parts/draw-when-visible.ts";
import { byId, element, htmlNodes } from "../parts/element.ts";
import type { Session } from "../session/session.ts";
import type { Themed } from "./linked-charts.ts";
import { followTheme, listenToMarks, newView, removeView } from "./vega-view.ts";

/** The views of a whole sweep. */
export interface SweepViews {
  /** Show what the session holds. */
  readonly follow: () => void;
  /** Read another row of the map of wires, by its diameter in m. */
  readonly chooseWire: (diameter: number) => void;
}

/**
 * Start the views of the whole sweep, which stand whether or not something fits: which limits stop which wire, and what each limit
 * costs.
 */
export function startSweepViews(session: Session, specs: Readonly<Record<"wires" | "prices", Themed>>): SweepViews {
  const prices = startSensitivities(specs.prices);
  const map = startWires(specs.wires);
  let { shown, relaxed } = session;
  const showWires = drawWhenVisible(byId("wires"), () => map.show(shown.result.wires ?? [], session.units));
  const showPrices = drawWhenVisible(byId("prices"), () => prices.show(relaxed ?? null, session.units));
  showWires();
  showPrices();
  session.wantRelaxed();
  return {
    follow: () => {
      const isNewRun = session.shown !== shown;
      if (isNewRun) {
        ({ shown } = session);
        showWires();
      }
      if (isNewRun || session.relaxed !== relaxed) {
        ({ relaxed } = session);
        showPrices();
      }
    },
    chooseWire: map.choose,
  };
}

/** The part of the page on which limits stop which wire. */
export interface WiresView {
  /** Show other rejection counts, or the same in other units. */
  readonly show: (wires: readonly WireFunnel[], units: Units) => void;
  /** Read the wire of this diameter, m. */
  readonly choose: (diameter: number) => void;
}

/** Take over the part on wires, with nothing in it yet. */
function startWires(specs: Themed): WiresView {
  const host = byId("wires-chart");
  const size = byId("wire-size") as HTMLSelectElement;
  const material = byId("wire-material") as HTMLSelectElement;
  let wires: readonly WireFunnel[] = [];
  let units: Units = { length: "mm", force: "N" };
  let sizes: readonly WireSize[] = [];
  let fields: readonly WireField[] = [];
  let chosen = Number.NaN;
  let view: View | undefined;

  const chosenSize = () => sizes.find(({ diameter }) => Math.abs(diameter - chosen) <= 1e-9);
  const read = () => {
    const found = chosenSize();
    size.value = found?.label ?? "";
    byId("wire-words").textContent = found === undefined ? "" : wireSentence(found);
    view?.data("chosen", fields.filter(({ size: label }) => label === found?.label).slice(0, 1)).run();
  };
  const fill = () => {
    view
      ?.height(wiresHeight(sizes.length))
      .data("fields", [...fields])
      .run();
    read();
  };
  const write = () => {
    const all = wireSizes(wires, units, material.value || null);
    sizes = soldSizes(all);
    fields = wireFields(sizes);
    size.replaceChildren(...sizes.map(({ label }) => element("option", { text: label, attributes: { value: label } })));
    if (chosenSize() === undefined) chosen = nearestSize(sizes)?.diameter ?? Number.NaN;
    byId("wires-words").textContent = wiresSentence(all);
    byId("wires-table").replaceChildren(...htmlNodes(wiresMarkup(sizes)));
    fill();
  };
  const chooseLabel = (label: string) => {
    chosen = sizes.find((one) => one.label === label)?.diameter ?? chosen;
    read();
  };

  followTheme((theme) => {
    if (view) removeView(host, view);
    view = newView(host, specs[theme]);
    listenToMarks<WireField>(view, "fraction", {
      tip: fieldTooltip,
      onChoose: (field) => chooseLabel(field.size),
    });
    fill();
  });
  size.addEventListener("change", () => chooseLabel(size.value));
  material.addEventListener("change", write);
  return {
    show: (nextWires, nextUnits) => {
      [wires, units] = [nextWires, nextUnits];
      offerMaterials(material, wires);
      byId("wires").hidden = wires.length === 0;
      write();
    },
    choose: (diameter) => {
      if (Math.abs(diameter - chosen) <= 1e-9) return;
      chosen = diameter;
      read();
    },
  };
}

/** All materials together, or one of them; nothing to choose where there is one. */
function offerMaterials(select: HTMLSelectElement, wires: readonly WireFunnel[]): void {
  const names = [...new Set(wires.map(({ material }) => material))];
  const kept = names.includes(select.value) ? select.value : "";
  const option = (value: string, text: string) => element("option", { text, attributes: { value } });
  select.replaceChildren(option("", "all together"), ...names.map((name) => option(name, name)));
  select.value = kept;
  byId("wire-material-label").hidden = names.length < 2;
}

function fieldTooltip({ size, column, fits, count, fraction }: WireField): [string, string][] {
  return [
    ["wire", size],
    [fits ? "springs that fit" : "rejected by", fits ? countWords(count) : column],
    ...(fits ? [] : ([["candidates", countWords(count)]] as [string, string][])),
    ["share of this wire", percentText(fraction)],
  ];
}

/** Concessions of one kind that are listed: more are in what `coilsieve relax` writes. */
const MOST_LISTED = 6;

/** The part of the page on what each limit costs. */
export interface SensitivityView {
  /** Show other prices, or the same in other units; null: they are being worked out. */
  readonly show: (result: RelaxResult | null, units: Units) => void;
}

/** Take over the part on prices, with nothing in it yet. */
function startSensitivities(specs: Themed): SensitivityView {
  const host = byId("prices-chart");
  let view: View | undefined;
  let bars: readonly SensitivityBar[] = [];
  let title = "";
  const fill = () => {
    const limits = new Set(bars.map(({ limit }) => limit)).size;
    view
      ?.height(PRICE_ROW * limits)
      .signal("gainTitle", title)
      .data("bars", [...bars])
      .run();
  };
  followTheme((theme) => {
    if (view) removeView(host, view);
    view = newView(host, specs[theme]);
    listenToMarks<SensitivityBar>(view, "gain", {
      tip: ({ limit, step, gain }) => [
        ["limit", limit],
        ["how", step],
        ["gain", percentWords(gain)],
      ],
    });
    fill();
  });
  return {
    show: (result, units) => {
      bars = result === null ? [] : sensitivityBars(result);
      title = result === null ? "" : gainTitle(result.merit, result.brief);
      host.hidden = bars.length === 0;
      byId("prices-words").textContent = headWords(result, units);
      byId("prices-list").replaceChildren(...sentences(result, units).map((text) => element("li", { text })));
      byId("prices-note").textContent = result?.best ? `${RELAXING} ${relaxedEndsText(result)}`.trimEnd() : "";
      fill();
      view?.resize();
    },
  };
}

function headWords(result: RelaxResult | null, units: Units): string {
  if (result === null) return "The prices are being worked out.";
  const { best, merit, concessions, brief } = result;
  if (best !== null) {
    return `The best design has ${figureWithValue(merit, best[merit], { ...brief, units })}. With one limit alone relaxed or removed, another would be best:`;
  }
  if (concessions.length > 0) return "Nothing fits. One of these would have to give, by that share of itself; the least first:";
  return "Nothing fits, and no limit gives enough alone, nor two together: ask less of load or room, or try other wires and materials.";
}

function sentences(result: RelaxResult | null, units: Units): string[] {
  if (result === null) return [];
  if (result.best !== null) return sensitivitySentences(result, units);
  const { concessions, brief } = result;
  const kinds = [1, 2].map((size) => concessions.filter(({ limits }) => limits.length === size).slice(0, MOST_LISTED));
  return kinds.flat().map((one) => relaxationSentence(one, brief, units));
}
