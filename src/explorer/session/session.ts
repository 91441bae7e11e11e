import { type BriefTexts, type BriefValue, briefTexts, editBrief, shownText } from "../../brief/edit.ts";
import type { MeritName, RelaxResult, SweepProgress, Units } from "../../model.ts";
import type { PageSource } from "../../report/page/page-data.ts";
import type { EngineAnswer, EngineProblem, EngineRequest } from "./engine.ts";
import type { Runner } from "./runner.ts";
import { type SpringKey, springKeyOf } from "./spring-key.ts";
import { type Shown, type Spring, shownOf } from "./springs.ts";

/** A brief that is changed and swept again; whoever shows it listens. */
export interface Session {
  /** The newest finished run; what every view shows. */
  readonly shown: Shown;
  /** The brief's text as it now stands, and as asked. */
  readonly text: string;
  readonly asked: string;
  /** The reader's units; a switch changes what is shown and nothing that is asked. */
  readonly units: Units;
  useUnits(units: Units): void;
  /** The two figures of the front and chart. */
  readonly axes: readonly [MeritName, MeritName];
  useAxes(axes: readonly [MeritName, MeritName]): void;
  /** The text that now stands at a key of the brief, a list joined by commas; undefined where none does. */
  textAt(key: string): string | undefined;
  /** The same as asked. */
  askedAt(key: string): string | undefined;
  isChanged(key: string): boolean;
  /** Keys whose text differs from what was asked, in the order of the brief. */
  readonly changedKeys: readonly string[];
  /** Put a text, word or list at a key (undefined: take it out) and run; the newest wins. */
  put(key: string, value: BriefValue | undefined): void;
  /** Draw this spring in every run that follows in which it fits; undefined: none in particular. */
  keep(spring: Spring | undefined): void;
  /** Put what was asked back at one key. */
  putBack(key: string): void;
  /** Bring the brief's own values back. */
  asAsked(): void;
  /** True while the shown run is not yet that of the text. */
  readonly busy: boolean;
  /** How far the run is that is going; undefined until that is told. */
  readonly progress: SweepProgress | undefined;
  /** End the run that is going; the last one stays shown. */
  stop(): void;
  /** True where the run of the text was ended before its end. */
  readonly stopped: boolean;
  /** Why the text cannot be run, as sentences that begin with the key; the last good run stays shown. */
  readonly problems: readonly string[];
  /** What is wrong at a key or below it, without the key. */
  problemAt(key: string): string | undefined;
  /**
   * What limits cost, for the shown run; undefined until it is known. The first call asks for it, also for every run that follows.
   */
  readonly relaxed: RelaxResult | undefined;
  wantRelaxed(): void;
  /** What a reader should know of how the sweep is run here; undefined where it runs as it should. */
  readonly notice: string | undefined;
  /** Told after every change of state (busy, problems, shown, units, axes). */
  listen(listener: (session: Session) => void): void;
}

/** What a session begins with. */
export interface SessionParts {
  readonly source: PageSource;
  /** The run that the page was written with. */
  readonly shown: Shown;
  /** Makes the runs; told whom to answer. */
  readonly start: (answer: (answer: EngineAnswer) => void) => Runner;
}

/** Begin a session with the run that the page was written with; nothing is run until something is changed. */
export function openSession({ source, shown, start }: SessionParts): Session {
  return new LiveSession(source, shown, start);
}

/** How long a run stands before its limits are priced, ms: while a limit is dragged none is. */
const QUIET = 400;

class LiveSession implements Session {
  shown: Shown;
  readonly asked: string;
  text: string;
  units: Units;
  axes: readonly [MeritName, MeritName];
  busy = false;
  stopped = false;
  progress: SweepProgress | undefined;
  problems: readonly string[] = [];
  relaxed: RelaxResult | undefined;

  private readonly askedTexts: BriefTexts;
  private texts: BriefTexts;
  private faults: readonly EngineProblem[] = [];
  private readonly runner: Runner;
  private readonly listeners: ((session: Session) => void)[] = [];
  /** Number of the newest request, and of the newest answer shown. */
  private newest = 0;
  private latest = 0;
  /** The requests that no answer has come to yet, and that of the run that is shown. */
  private sent: readonly EngineRequest[] = [];
  private ran: EngineRequest;
  private wantsRelaxed = false;
  private kept: SpringKey | undefined;
  private pricing: ReturnType<typeof setTimeout> | undefined;

  constructor(source: PageSource, shown: Shown, start: SessionParts["start"]) {
    this.shown = shown;
    this.asked = source.text;
    this.text = source.text;
    this.units = shown.brief.units;
    this.axes = shown.result.frontAxes;
    this.ran = { id: 0, text: source.text, axes: this.axes };
    this.askedTexts = briefTexts(source.text);
    this.texts = this.askedTexts;
    this.runner = start((answer) => this.take(answer));
  }

  get notice(): string | undefined {
    return this.runner.notice;
  }

  useUnits(units: Units): void {
    this.units = units;
    this.shown = inUnitsOf(this.shown, units);
    this.tell();
  }

  useAxes(axes: readonly [MeritName, MeritName]): void {
    this.axes = axes;
    this.run();
  }

  textAt(key: string): string | undefined {
    return shownText(this.texts.get(key));
  }

  askedAt(key: string): string | undefined {
    return shownText(this.askedTexts.get(key));
  }

  isChanged(key: string): boolean {
    return this.textAt(key) !== this.askedAt(key);
  }

  get changedKeys(): readonly string[] {
    return [...new Set([...this.askedTexts.keys(), ...this.texts.keys()])].filter((key) => this.isChanged(key));
  }

  put(key: string, value: BriefValue | undefined): void {
    this.change(editBrief(this.text, key, value));
  }

  keep(spring: Spring | undefined): void {
    this.kept = spring && springKeyOf(spring.choice, this.shown.brief);
  }

  putBack(key: string): void {
    this.put(key, this.askedTexts.get(key));
  }

  asAsked(): void {
    this.change(this.asked);
  }

  stop(): void {
    if (!this.busy) return;
    this.runner.stop();
    // An answer that is on its way is of a run that is not wanted.
    this.latest = this.newest;
    this.sent = [];
    this.progress = undefined;
    this.busy = false;
    this.stopped = true;
    this.tell();
  }

  problemAt(key: string): string | undefined {
    const found = this.faults.find((fault) => fault.key === key || fault.key.startsWith(`${key}.`));
    return found?.sentence;
  }

  wantRelaxed(): void {
    this.wantsRelaxed = true;
    if (this.busy || this.relaxed !== undefined) return;
    clearTimeout(this.pricing);
    const { ran } = this;
    this.pricing = setTimeout(() => this.runner.relax(ran), QUIET);
  }

  listen(listener: (session: Session) => void): void {
    this.listeners.push(listener);
  }

  private change(text: string): void {
    this.text = text;
    this.texts = briefTexts(text);
    // Where all is as asked again the bytes are too, whatever the edits left of the layout.
    if (this.changedKeys.length === 0) this.text = this.asked;
    this.run();
  }

  private run(): void {
    clearTimeout(this.pricing);
    this.busy = true;
    this.stopped = false;
    this.newest++;
    const request = { id: this.newest, text: this.text, axes: this.axes, ...(this.kept && { kept: this.kept }) };
    this.sent = [...this.sent, request];
    this.runner.run(request);
    this.tell();
  }

  private take(answer: EngineAnswer): void {
    if (answer.kind === "progress") {
      if (!this.busy || answer.id <= this.latest) return;
      this.progress = answer.progress;
    } else if (answer.kind === "relaxed") {
      if (answer.id !== this.ran.id || this.busy) return;
      this.relaxed = answer.relaxed;
    } else {
      // An answer older than what is shown tells nothing new; a problem of a text that is gone is none.
      if (answer.id <= this.latest || (answer.kind === "problems" && answer.id < this.newest)) return;
      this.latest = answer.id;
      this.progress = undefined;
      this.busy = answer.id < this.newest;
      this.faults = answer.kind === "problems" ? answer.problems : [];
      this.problems = this.faults.map(({ key, sentence }) => `${key}: ${sentence}`);
      if (answer.kind === "run") {
        this.shown = shownOf(answer.data, this.units);
        this.relaxed = undefined;
        this.ran = this.sent.find(({ id }) => id === answer.id) ?? this.ran;
      }
      this.sent = this.sent.filter(({ id }) => id > answer.id);
      // What is wrong with a text that was typed leaves the run that is shown, and what its limits cost, as they were.
      if (this.wantsRelaxed) this.wantRelaxed();
    }
    this.tell();
  }

  private tell(): void {
    for (const listener of this.listeners) listener(this);
  }
}

/** The same run in other units: what is computed is SI and stays. */
function inUnitsOf(shown: Shown, units: Units): Shown {
  const brief = { ...shown.brief, units };
  return { ...shown, brief, result: { ...shown.result, brief } };
}
