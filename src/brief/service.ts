import type { FarEnd, Service } from "../model.ts";
import { present } from "./present.ts";
import { exactQuantity } from "./quantities.ts";
import type { Section } from "./section.ts";

/** What is taken where the brief is silent. */
const defaults = {
  seats: "parallel plates",
  farEnd: "on a seat",
  set: "as wound",
  surface: "unpeened",
  strength: "minimum",
} as const;

/** The section `service` but for its scatter -> how the spring is used, SI. What is wrong in it is noted, and its default stands in. */
export function readService(service: Section): Service {
  const seats = wordOrDefault<Service["seats"]>(service, "seats");
  return present<Service>({
    seats,
    farEnd: readFarEnd(service, seats),
    set: wordOrDefault<Service["set"]>(service, "set"),
    surface: wordOrDefault<Service["surface"]>(service, "surface"),
    strength: wordOrDefault<Service["strength"]>(service, "strength"),
    cycles: exactQuantity(service, "cycles"),
    frequency: exactQuantity(service, "frequency"),
    temperature: exactQuantity(service, "temperature"),
  });
}

/** Only one kind of seats leaves an end that may swing. */
function readFarEnd(service: Section, seats: Service["seats"]): FarEnd | undefined {
  if (seats === "clamped and free") return wordOrDefault<FarEnd>(service, "farEnd");
  if (!service.has("farEnd")) return undefined;
  return service.problem(
    "farEnd",
    "bothEndsHeld",
    `seats ${seats} hold both ends`,
    "leave it out, or write seats: clamped and free",
  );
}

function wordOrDefault<Word extends string>(service: Section, name: keyof typeof defaults): Word {
  if (!service.has(name)) service.takeDefault(name, defaults[name], "default of coilsieve");
  return service.word<Word>(name) ?? (defaults[name] as string as Word);
}
