import type { View } from "vega";
import type { Units, WireFunnel } from "../model.ts";
import { countWords, shareWords } from "../report/funnel.ts";
import { wiresMarkup } from "../report/view-parts.ts";
import { type WireField, wiresHeight } from "../report/wires-chart.ts";
import {
  nearestSize,
  soldSizes,
  type WireSize,
  wireFields,
  wireSentence,
  wireSizes,
  wiresSentence,
} from "../report/wires-words.ts";
import { byId, element, htmlNodes } from "./element.ts";
import type { Themed } from "./linked-charts.ts";
import { followTheme } from "./theme.ts";
import { listenToMarks, newView, removeView } from "./view.ts";

/** The part of the page on which limits stop which wire. */
export interface WiresView {
  /** Show another tally, or the same in other units. */
  readonly show: (wires: readonly WireFunnel[], units: Units) => void;
  /** Read the wire of this diameter, m. */
  readonly choose: (diameter: number) => void;
}

/** Take over the part on wires, with nothing in it yet. */
export function startWires(specs: Themed): WiresView {
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
    listenToMarks<WireField>(view, "share", {
      tip: fieldTip,
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

function fieldTip({ size, column, fits, count, share }: WireField): [string, string][] {
  return [
    ["wire", size],
    [fits ? "springs that fit" : "fell at", fits ? countWords(count) : column],
    ...(fits ? [] : ([["candidates", countWords(count)]] as [string, string][])),
    ["share of this wire", shareWords(share)],
  ];
}
