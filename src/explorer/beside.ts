import type { Brief, Design } from "../model.ts";
import { showComparison } from "./comparison.ts";
import { element } from "./element.ts";
import { judge, type Kept } from "./still-fits.ts";

/** Springs kept at most: what stands side by side on a page. */
const MOST = 3;

const NAMES = ["A", "B", "C"] as const;

/** The springs that a reader keeps beside one another, whatever is chosen and whatever the brief becomes. */
export class Beside {
  private readonly part: HTMLElement;
  private readonly host: HTMLElement;
  private readonly onChange: () => void;
  private kept: readonly Kept[] = [];
  private brief: Brief;

  /**
   * @param part      the part of the page, hidden while nothing is kept
   * @param host      what is filled
   * @param brief     as it stands at first
   * @param onChange  told after a spring was kept or put out
   */
  constructor(part: HTMLElement, host: HTMLElement, brief: Brief, onChange: () => void) {
    this.part = part;
    this.host = host;
    this.brief = brief;
    this.onChange = onChange;
  }

  /** Hold what is kept against the brief as it now stands, and draw it anew: after a run, a switch of units, a resize. */
  show(brief = this.brief): void {
    this.brief = brief;
    this.part.hidden = this.kept.length === 0;
    const judged = this.kept.map((kept) => judge(kept, brief));
    showComparison(this.host, judged, (name) => this.putOut(name));
  }

  /** The button that keeps a spring or puts it out; where the places are taken it says so and does nothing. */
  button(design: Design, brief: Brief): HTMLElement {
    const held = this.kept.find((one) => isSame(one.design, design));
    const isFull = held === undefined && this.kept.length === MOST;
    const text = held ? `Put ${held.name} out` : isFull ? `Keep beside: ${MOST} are kept, put one out first` : "Keep beside";
    const button = element("button", {
      text,
      attributes: { type: "button", id: "keep", ...(isFull ? { "aria-disabled": "true" } : {}) },
    });
    button.addEventListener("click", () => {
      if (isFull) return;
      if (held) this.putOut(held.name);
      else this.keep(design, brief);
    });
    return button;
  }

  private keep(design: Design, brief: Brief): void {
    const name = NAMES.find((one) => !this.kept.some((kept) => kept.name === one)) as string;
    this.kept = [...this.kept, { name, design, brief }].sort((a, b) => a.name.localeCompare(b.name));
    this.changed();
  }

  private putOut(name: string): void {
    this.kept = this.kept.filter((one) => one.name !== name);
    this.changed();
  }

  private changed(): void {
    this.show();
    this.onChange();
  }
}

/** The same wire wound the same way. */
function isSame(a: Design, b: Design): boolean {
  return (
    a.material === b.material &&
    a.series === b.series &&
    a.wire === b.wire &&
    a.ends === b.ends &&
    a.totalTurns === b.totalTurns &&
    a.meanDiameter === b.meanDiameter &&
    a.freeLength === b.freeLength
  );
}
