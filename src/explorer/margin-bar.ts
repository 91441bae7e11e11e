import { svgElement } from "./element.ts";

/** The distance from a limit, which stands at the left end of its rail, as a bar; the number beside it says the same. */
export function marginBar(margin: number): Element {
  const room = 100 * Math.max(0, Math.min(1, margin));
  return svgElement(
    '<svg xmlns="http://www.w3.org/2000/svg" class="bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">' +
      `<rect class="rail" y="4.5" width="100" height="1" fill="#d9dee2"/><rect class="room" width="${room.toFixed(2)}" height="10" fill="#0b5a75"/>` +
      '<rect class="limit" width="0.8" height="10" fill="#1c2227"/></svg>',
  );
}
