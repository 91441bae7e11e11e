/** What stands for an end style in charts, by its place in the brief; more than there are begin again. */
export const endShapes = ["circle", "square", "cross", "diamond", "triangle-up", "triangle-down"] as const;

const PATHS: Readonly<Record<string, string>> = {
  circle: "M5,0A5,5,0,1,1,-5,0A5,5,0,1,1,5,0Z",
  square: "M-4.5,-4.5h9v9h-9Z",
  cross: "M-5,-1.7h3.3v-3.3h3.4v3.3h3.3v3.4h-3.3v3.3h-3.4v-3.3h-3.3Z",
  diamond: "M0,-5.5L4,0L0,5.5L-4,0Z",
  "triangle-up": "M0,-4.6L5.2,4.4H-5.2Z",
  "triangle-down": "M0,4.6L-5.2,-4.4H5.2Z",
};

/** A shape as the path of a mark about the origin, 10 units wide. */
export function shapePath(shape: string): string {
  return PATHS[shape] ?? "";
}
