import type { MeritName } from "../model.ts";
import { byId } from "./element.ts";

type Axes = readonly [MeritName, MeritName];

/** Let a reader choose the figures across and up; a figure that stands on the other axis changes places with it. */
export function wireAxes(first: Axes, onChange: (axes: Axes) => void): void {
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
