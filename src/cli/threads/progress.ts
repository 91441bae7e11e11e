import type { Brief } from "../../model.ts";
import { oneLine } from "../../problem.ts";
import { limitWords } from "../../report/text/labels.ts";
import { percentText } from "../../report/text/rejections.ts";
import type { Progress, Watch, Work } from "./threads.ts";

/** A search that is over before this shows nothing, ms; then the line is written anew so often. */
const QUIET = 1000;
const ANEW = 250;

const ERASE = "\r\u001b[2K";

/**
 * A line on the terminal for a search that takes longer than a second: the share done, the rate, the time left. It is erased at the
 * end. Nothing is written where stderr is no terminal.
 *
 * @param brief  that is walked
 */
export function progressLine({ title }: Brief): Watch {
  const { stderr } = process;
  if (stderr.isTTY !== true) return () => () => {};
  return (work, progress) => {
    let shown = false;
    const write = () => {
      const now = progress();
      if (now.seconds * 1000 < QUIET) return;
      const line = oneLine(`${title}: ${workWords(work)}, ${progressWords(now, countedIn(work))}`);
      // One short of the width: a full line makes some terminals begin the next.
      stderr.write(`${ERASE}${line.slice(0, (stderr.columns || 80) - 1)}`);
      shown = true;
    };
    const timer = setInterval(write, ANEW);
    return () => {
      clearInterval(timer);
      if (shown) stderr.write(ERASE);
    };
  };
}

/** What is done, as a line says it. */
export function workWords(work: Work): string {
  switch (work.kind) {
    case "feasibleDesigns":
      return "writing every spring that fits";
    case "fullSearch":
      return "walking";
    case "sampling":
      return "drawing springs";
    case "relax":
      return "pricing the limits";
    case "nested":
      return "looking for pairs";
    case "nearMiss":
      return `looking for the nearest miss of ${limitWords[work.limit].label}`;
    case "leastViolation":
      return "looking for the nearest wire and turns that hold nothing";
  }
}

/** What a count of its progress counts. */
export function countedIn({ kind }: Work): string {
  return kind === "sampling" ? "springs" : "candidates";
}

/** `42.0 % done, 3.1 million candidates a second, 12 s left`. */
export function progressWords({ fraction, counted, seconds }: Progress, noun: string): string {
  if (fraction === null) return `${durationWords(seconds)} so far`;
  const left = fraction > 0 ? `, ${durationWords((seconds * (1 - fraction)) / fraction)} left` : "";
  return `${percentText(fraction)} done, ${largeWords(counted / seconds)} ${noun} a second${left}`;
}

/** A large count in round figures: `950`, `48 thousand`, `3.1 million`. */
export function largeWords(count: number): string {
  for (const [size, name] of [
    [1e9, "billion"],
    [1e6, "million"],
    [1e3, "thousand"],
  ] as const) {
    if (count >= size) return `${Number((count / size).toPrecision(2))} ${name}`;
  }
  return String(Math.round(count));
}

/** `12 s` or `3 min`. */
function durationWords(seconds: number): string {
  return seconds < 100 ? `${Math.ceil(seconds)} s` : `${Math.ceil(seconds / 60)} min`;
}
