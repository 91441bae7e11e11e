import { editBrief } from "../../brief/edit.ts";
import type { Brief, SweepProgress } from "../../model.ts";
import type { PageSource } from "../../report/page/page-data.ts";
import { keyWords } from "../../report/text/key-labels.ts";
import { percentText } from "../../report/text/rejections.ts";
import { download } from "../parts/download.ts";
import { element } from "../parts/element.ts";
import type { Session } from "../session/session.ts";

/** How long a run takes before a reader may stop it, ms: most are over by then. */
const PATIENCE = 1000;

const DOING = { walk: "Walking the space", nearest: "Looking for the nearest misses", draw: "Drawing springs" } as const;

/** What a run does that takes long, and how far it is with that. */
function progressWords(progress: SweepProgress | undefined): string {
  return progress === undefined ? "Sweeping" : `${DOING[progress.work]}: ${percentText(progress.share)} done`;
}

const STOPPED = "Stopped before its end: what stands below is the last run that was finished.";

/** How the shown brief differs from the one asked, what is wrong with it, and buttons to take it away and to go back. */
export function runPanel(host: HTMLElement, session: Session, source: PageSource): void {
  const changes = element("p", { attributes: { id: "changes" } });
  const problems = element("div", { attributes: { id: "problems", role: "status" } });
  const notice = element("p", { class: "soft", attributes: { id: "run-notice" } });
  const save = button("Save this brief", () => saveBrief(session, source));
  const back = button("As asked", () => session.asAsked());
  const stop = button("Stop", () => session.stop());
  stop.hidden = true;
  const acts = element("p", { class: "acts screen-only" }, [save, back, stop, ...besideWords(session.shown.brief)]);
  host.replaceChildren(changes, problems, notice, acts);
  host.hidden = false;

  let waiting: ReturnType<typeof setTimeout> | undefined;
  const offerStop = (busy: boolean) => {
    if (!busy) {
      clearTimeout(waiting);
      waiting = undefined;
      stop.hidden = true;
    } else {
      waiting ??= setTimeout(() => {
        stop.hidden = false;
        follow();
      }, PATIENCE);
    }
  };
  const follow = () => {
    const { problems: sentences } = session;
    offerStop(session.busy);
    const words = session.stopped ? STOPPED : stop.hidden ? session.notice : progressWords(session.progress);
    setText(changes, changesSentence(session));
    setText(notice, words ?? "");
    notice.hidden = words === undefined;
    back.disabled = session.changedKeys.length === 0;
    save.disabled = sentences.length > 0;
    showProblems(problems, sentences);
  };
  session.listen(follow);
  follow();
}

/** Every value that differs from the brief as asked, each beside what was asked. */
export function changesSentence(session: Pick<Session, "changedKeys" | "textAt" | "askedAt" | "shown">): string {
  const { changedKeys, shown } = session;
  if (changedKeys.length === 0) return "As the brief asks: nothing is changed.";
  const parts = changedKeys.map((key) => changeWords(keyWords(key, shown.brief), session.textAt(key), session.askedAt(key)));
  return `Changed from the brief: ${parts.join("; ")}.`;
}

function changeWords(label: string, now: string | undefined, asked: string | undefined): string {
  if (now === undefined) return `${label} left out instead of ${asked}`;
  return asked === undefined ? `${label} ${now}, where the brief is silent` : `${label} ${now} instead of ${asked}`;
}

/** A saved brief names its author's own files as the brief did. */
function besideWords({ sweep: { wires, materials, ends } }: Brief): HTMLElement[] {
  const paths = [...wires, ...materials, ...ends].flatMap(({ path }) => (path === undefined ? [] : [path]));
  if (paths.length === 0) return [];
  return [element("span", { class: "soft", text: `A saved brief is read beside ${paths.join(", ")}, as this one was.` })];
}

function showProblems(host: HTMLElement, sentences: readonly string[]): void {
  const words = sentences.join("\n");
  if (host.dataset.words === words) return;
  host.dataset.words = words;
  const items = sentences.map((text) => element("li", { text }));
  const told = [
    element("ul", { class: "problems" }, items),
    element("p", { text: "What stands below is the last run that could be made." }),
  ];
  host.replaceChildren(...(sentences.length === 0 ? [] : told));
}

/** A status that is written again is spoken again, so only what changed is written. */
function setText(host: HTMLElement, text: string): void {
  if (host.textContent !== text) host.textContent = text;
}

function button(text: string, act: () => void): HTMLButtonElement {
  const made = element("button", { text, attributes: { type: "button" } });
  made.addEventListener("click", act);
  return made;
}

/** The brief as it now stands, in a file that the command line reads to the same result. */
function saveBrief(session: Session, { file }: PageSource): void {
  const { text, shown } = session;
  // A brief without a title is called by its file, and this file has another name.
  const whole = session.textAt("title") === undefined ? editBrief(text, "title", shown.brief.title) : text;
  download({ name: savedName(file), type: "text/plain", content: whole });
}

/** `latch.yaml` -> `latch-changed.yaml`. */
export function savedName(file: string): string {
  const [, base = file, ending = ".yaml"] = /^(?:.*[/\\])?(.*?)(\.ya?ml|\.json)?$/i.exec(file) ?? [];
  return `${base}-changed${ending}`;
}
