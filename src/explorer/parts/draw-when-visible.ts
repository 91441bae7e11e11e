/** How long changes must pause before what is out of sight follows them, ms. */
const PAUSE = 200;

/**
 * Draw a part of the page at once where it is in sight, so that what a reader watches moves with a handle. Out of sight it is drawn
 * once changes pause, comes into sight or is printed.
 *
 * @param part  what is watched
 * @param draw  draws the newest state
 * @returns asks for a drawing
 */
export function drawWhenVisible(part: HTMLElement, draw: () => void): () => void {
  // Whatever is drawn before the browser has looked is drawn at once.
  let isInSight = true;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const catchUp = () => {
    if (waiting === undefined) return;
    clearTimeout(waiting);
    waiting = undefined;
    draw();
  };
  const watch = new IntersectionObserver((seen) => {
    isInSight = seen.at(-1)?.isIntersecting ?? isInSight;
    if (isInSight) catchUp();
  });
  watch.observe(part);
  window.addEventListener("beforeprint", catchUp);
  return () => {
    clearTimeout(waiting);
    waiting = setTimeout(catchUp, PAUSE);
    if (isInSight) catchUp();
  };
}
