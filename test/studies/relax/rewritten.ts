import type { Brief, LimitName, Limits, Quantity, Window } from "../../../src/model.ts";

/** Every end of a window moved outwards by a share of itself. */
function wider<T extends Window | Quantity>(window: T, share: number): T {
  const { min, max } = window;
  return {
    ...window,
    ...(min === undefined ? {} : { min: Math.max(0, min * (1 - share)) }),
    ...(max === undefined ? {} : { max: max * (1 + share) }),
  };
}

/**
 * A brief written anew with one limit eased, as its author would do it.
 *
 * @param share  of each bound; null: the limit is switched off
 * @returns null where no brief says so: the rate that points ask, forces at temperature by a share, what fatigue data stand on, geometry
 */
export function rewritten(brief: Brief, limit: LimitName, share: number | null): Brief | null {
  const { limits, envelope, load } = brief;
  const withLimits = (changed: Partial<Limits>): Brief => ({ ...brief, limits: { ...limits, ...changed } });
  const off = () => withLimits({ [limit]: "off" });
  switch (limit) {
    case "turns":
      if (share === null) return brief.sweep.turns === "any" ? off() : null;
      return limits.turns === "off" ? null : withLimits({ turns: wider(limits.turns, share) });
    case "index":
      return share === null ? off() : limits.index === "off" ? null : withLimits({ index: wider(limits.index, share) });
    case "clash":
      return share === null ? off() : withLimits({ clash: scaled(limits.clash, Math.max(0, 1 - share)) });
    case "workingStress":
    case "solidStress": {
      const asked = limits[limit];
      if (share === null || asked === "off") return off();
      const eased = "max" in asked ? { max: asked.max * (1 + share) } : { safety: asked.safety / (1 + share) };
      return withLimits({ [limit]: { ...asked, ...eased } });
    }
    case "buckling":
      return share === null || limits.buckling === "off"
        ? off()
        : withLimits({ buckling: { safety: limits.buckling.safety * (1 - share) } });
    case "surge":
      return share === null || limits.surge === "off"
        ? off()
        : withLimits({ surge: { multiple: limits.surge.multiple * (1 - share) } });
    case "fatigue":
      if (share === null || limits.fatigue === "off") return off();
      if (brief.practice === "handbook") return null;
      return withLimits({ fatigue: { ...limits.fatigue, safety: limits.fatigue.safety * (1 - share) } });
    case "loadTolerance":
      return share === null ? off() : null;
    case "temperature":
      return share === null ? withLimits({ lifted: [...limits.lifted, limit] }) : null;
    case "rate":
      if (share === null || (load.kind !== "rateAndPoint" && load.kind !== "rateAndLargestForce")) return null;
      return { ...brief, load: { ...load, rate: wider(load.rate, share) } };
    case "hotForce":
      return share === null ? withLimits({ lifted: [...limits.lifted, limit] }) : null;
    case "pitch":
      return null;
  }
  if (limit === "wire") return null;
  if (share === null) return withLimits({ lifted: [...limits.lifted, limit] });
  const { outsideDiameter, bore, insideDiameter, solidLength, freeLength } = envelope;
  const eased = {
    outsideDiameter: {
      ...(outsideDiameter && { outsideDiameter: wider(outsideDiameter, share) }),
      ...(bore !== undefined && { bore: bore * (1 + share) }),
    },
    insideDiameter: { ...(insideDiameter && { insideDiameter: wider(insideDiameter, share) }) },
    solidLength: { ...(solidLength && { solidLength: wider(solidLength, share) }) },
    freeLength: { ...(freeLength && { freeLength: wider(freeLength, share) }) },
  }[limit];
  return { ...brief, envelope: { ...envelope, ...eased } };
}

function scaled(clash: Limits["clash"], factor: number): Limits["clash"] {
  if (clash === "off") return clash;
  return Object.fromEntries(Object.entries(clash).map(([key, value]) => [key, factor * value])) as unknown as Limits["clash"];
}
