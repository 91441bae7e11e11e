import type { Brief } from "../../model.ts";
import { endShapes, shapePath } from "../../report/charts/scatter.ts";
import { element, svgElement } from "../parts/element.ts";
import type { Session } from "../session/session.ts";

/** One list of the brief that is put in and out by its names. */
interface Kind {
  readonly key: "sweep.materials" | "sweep.wires" | "sweep.ends";
  readonly heading: string;
  /** One of them, for a sentence. */
  readonly one: string;
  readonly of: (brief: Brief) => readonly { readonly name: string; readonly path?: string }[];
}

const KINDS: readonly Kind[] = [
  { key: "sweep.materials", heading: "materials", one: "material", of: ({ sweep }) => sweep.materials },
  { key: "sweep.wires", heading: "wires", one: "series of wires", of: ({ sweep }) => sweep.wires },
  { key: "sweep.ends", heading: "ends", one: "end style", of: ({ sweep }) => sweep.ends },
];

/**
 * The legend of the chart: materials, wire series and end styles by name, each put in or out by a press. The last of a kind stays.
 *
 * @param host     what is filled
 * @param asked    the brief as asked, which has every name
 * @param session  the brief that the legend changes
 */
export function legendRow(host: HTMLElement, asked: Brief, session: Session): { readonly follow: () => void } {
  const why = element("p", { class: "legend-why", attributes: { role: "status" } });
  const groups = KINDS.map((kind) => group(kind, asked, session, (words) => (why.textContent = words)));
  host.replaceChildren(...groups.map((one) => one.host), why);
  const follow = () => {
    for (const one of groups) one.follow();
  };
  follow();
  return { follow };
}

function group({ key, heading, one, of }: Kind, asked: Brief, session: Session, say: (words: string) => void) {
  const entries = of(asked).map(({ name, path }) => ({ name, written: path ?? name }));
  // What was pressed counts before its run is back, so that two quick presses both hold.
  let wished: readonly string[] | null = null;
  const now = () => wished ?? of(session.shown.brief).map(({ path, name }) => path ?? name);

  const buttons = entries.map(({ name, written }) => {
    const mark = key === "sweep.ends" ? [endMark(entries.findIndex((entry) => entry.name === name))] : [];
    const button = element("button", { class: "legend-entry", attributes: { type: "button" } }, [...mark, name]);
    button.addEventListener("click", () => {
      const isIn = now().includes(written);
      const next = entries.map((entry) => entry.written).filter((entry) => (entry === written ? !isIn : now().includes(entry)));
      if (next.length === 0) return say(`${name} stays: without it there is no ${one} left to try.`);
      say("");
      wished = next;
      session.put(key, next);
    });
    return { button, written };
  });
  const host = element("div", { class: "legend-group", attributes: { role: "group", "aria-label": heading } }, [
    element("span", { class: "soft", text: heading }),
    ...buttons.map(({ button }) => button),
  ]);
  return {
    host,
    follow: () => {
      if (!session.busy) wished = null;
      const list = now();
      for (const { button, written } of buttons) {
        button.setAttribute("aria-pressed", String(list.includes(written)));
        button.title = list.includes(written)
          ? list.length === 1
            ? `the last ${one}: it stays`
            : "in; press to leave it out"
          : "left out; press to try it again";
      }
    },
  };
}

/** The mark that the chart draws for an end style. */
function endMark(place: number): Element {
  const shape = endShapes[place % endShapes.length] as string;
  return svgElement(
    `<svg xmlns="http://www.w3.org/2000/svg" class="end-mark" viewBox="-6 -6 12 12" width="12" height="12" aria-hidden="true"><path d="${shapePath(shape)}"/></svg>`,
  );
}
