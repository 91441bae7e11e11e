import type { LimitName } from "../../model.ts";
import { limitWords } from "../../report/text/labels.ts";
import { countWords, percentText, walkedSentence } from "../../report/text/rejections.ts";
import { element } from "../parts/element.ts";
import type { Session } from "../session/session.ts";
import { type BoundField, boundField } from "./bound-field.ts";
import { type Bound, boundsOf } from "./bounds.ts";

interface LimitRow {
  readonly host: HTMLElement;
  readonly follow: (bounds: readonly Bound[]) => void;
}

/**
 * Every limit as a row: what it holds, its bounds to be changed, and how many fell there. Rows stay where they are, in the order in
 * which a candidate falls, so that none moves from under a pointer.
 *
 * @param host     what is filled
 * @param session  the brief that the fields change
 */
export function limitRows(host: HTMLElement, session: Session): { readonly follow: () => void } {
  const words = element("span");
  const hint = element("span", { class: "screen-only", text: " A bound changed here is tried at once." });
  const rows = new Map((Object.keys(limitWords) as LimitName[]).map((limit) => [limit, limitRow(limit, session)]));
  const head = element("div", { class: "limit-head", attributes: { "aria-hidden": "true" } }, [
    element("span", { text: "limit" }),
    element("span", { text: "held at" }),
    element("span", { class: "number", text: "rejected" }),
  ]);
  host.replaceChildren(
    element("p", {}, [words, hint]),
    head,
    element(
      "ul",
      { class: "limits", attributes: { "aria-label": "Limits" } },
      [...rows.values()].map((row) => row.host),
    ),
  );
  const follow = () => {
    const { result, brief } = session.shown;
    words.textContent = `${walkedSentence(result)} Each other one is counted at the first limit that it breaks.`;
    const bounds = boundsOf(brief);
    for (const [limit, row] of rows) row.follow(bounds.filter((bound) => bound.limit === limit));
  };
  follow();
  return { follow };
}

function limitRow(limit: LimitName, session: Session): LimitRow {
  const { label, sentence } = limitWords[limit];
  const fields = new Map<string, BoundField>();
  const bounds = element("div", { class: "limit-bounds" });
  const count = element("span");
  const percent = element("span", { class: "soft" });
  const rail = element("span", { class: "fell-rail", attributes: { "aria-hidden": "true" } }, [element("span")]);
  const fell = element("p", { class: "fell" }, [count, " ", percent, rail]);
  const host = element("li", { class: "limit" }, [
    element("div", { class: "limit-name" }, [element("h3", { text: label }), element("p", { class: "soft", text: sentence })]),
    bounds,
    fell,
  ]);

  const fieldOf = (bound: Bound): BoundField => {
    const known = fields.get(bound.key) ?? boundField(bound, session);
    fields.set(bound.key, known);
    return known;
  };
  return {
    host,
    follow: (asked) => {
      const { rejected, walked } = session.shown.result;
      const number = rejected[limit] ?? 0;
      host.hidden = asked.length === 0 && number === 0;
      // One that is not set and took nothing is an offer, which paper has no use for.
      host.classList.toggle("idle", number === 0 && asked.every(({ value }) => value === undefined));
      const shown = asked.map(fieldOf);
      // Moving a field in the page would take the focus from it.
      if (shown.length !== bounds.children.length || shown.some((field, i) => bounds.children[i] !== field.host)) {
        bounds.replaceChildren(...shown.map((field) => field.host));
      }
      asked.forEach((bound, i) => {
        shown[i]?.follow(bound);
      });
      count.textContent = number === 0 ? "none" : countWords(number);
      percent.textContent = number === 0 ? "" : percentText(number / walked);
      (rail.firstElementChild as HTMLElement).style.width = `${walked > 0 ? (100 * number) / walked : 0}%`;
    },
  };
}
