import type { Theme } from "../report/charts.ts";

/** Draw now and whenever the ground changes: with the system, and for paper, which is light whatever the screen is. */
export function followTheme(draw: (theme: Theme) => void): void {
  const dark = window.matchMedia("(prefers-color-scheme: dark)");
  const onScreen = () => draw(dark.matches ? "dark" : "light");
  onScreen();
  dark.addEventListener("change", onScreen);
  // Only a dark chart needs drawing anew for paper.
  window.addEventListener("beforeprint", () => dark.matches && draw("light"));
  window.addEventListener("afterprint", () => dark.matches && draw("dark"));
}
