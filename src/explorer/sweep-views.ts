import { byId } from "./element.ts";
import { drawnInSight } from "./in-sight.ts";
import type { Themed } from "./linked-charts.ts";
import { startPrices } from "./prices-view.ts";
import type { Session } from "./session.ts";
import { startWires } from "./wires-view.ts";

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
  const prices = startPrices(specs.prices);
  const map = startWires(specs.wires);
  let { shown, relaxed } = session;
  const showWires = drawnInSight(byId("wires"), () => map.show(shown.result.wires ?? [], session.units));
  const showPrices = drawnInSight(byId("prices"), () => prices.show(relaxed ?? null, session.units));
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
