import { type Body, GENERATED, type Solid } from "./body.ts";
import { spansOf } from "./wire.ts";

/** Corners of the mesh along one turn, and about the wire; a multiple of four, so that none lies at its lowest or highest. */
const ALONG = 48;
const ABOUT = 16;

/** Steel that a viewer lights without surroundings to mirror. */
const METAL = { pbrMetallicRoughness: { baseColorFactor: [0.6, 0.63, 0.67, 1], metallicFactor: 0.4, roughnessFactor: 0.5 } };

/**
 * One spring, or two in one another, as a mesh for viewers: binary glTF 2.0, metres, the axis of the coil upright.
 *
 * @param solid  the springs at one length
 * @returns the bytes of the file
 */
export function glbFile({ title, bodies }: Solid): Uint8Array<ArrayBuffer> {
  const parts = bodies.flatMap(meshOf);
  let length = 0;
  const bufferViews = parts.map(({ byteLength }) => {
    length += byteLength;
    return { buffer: 0, byteOffset: length - byteLength, byteLength };
  });
  const accessors = parts.map((part, bufferView) => {
    if (part instanceof Uint32Array) return { bufferView, componentType: 5125, count: part.length, type: "SCALAR" };
    const reach = (pick: (a: number, b: number) => number) =>
      [0, 1, 2].map((axis) => part.reduce((far, value, i) => (i % 3 === axis ? pick(far, value) : far), part[axis] as number));
    return { bufferView, componentType: 5126, count: part.length / 3, type: "VEC3", min: reach(Math.min), max: reach(Math.max) };
  });
  const text = JSON.stringify({
    asset: { version: "2.0", generator: GENERATED },
    scene: 0,
    scenes: [{ name: title, nodes: bodies.map((_, i) => i) }],
    nodes: bodies.map(({ name, properties }, mesh) => ({ name, mesh, extras: { title, ...Object.fromEntries(properties) } })),
    meshes: bodies.map((_, i) => ({ primitives: [{ attributes: { POSITION: 2 * i }, indices: 2 * i + 1, material: 0 }] })),
    materials: [METAL],
    accessors,
    bufferViews,
    buffers: [{ byteLength: length }],
  });
  const encode = (padding: number) => new TextEncoder().encode(text + " ".repeat(padding));
  const json = encode(-encode(0).length & 3);
  // "glTF", version 2; then two chunks, each its length, its kind ("JSON", "BIN") and its bytes.
  const head = new Uint32Array([0x46546c67, 2, 28 + json.length + length, json.length, 0x4e4f534a]);
  const pieces = [head, json, new Uint32Array([length, 0x004e4942]), ...parts];
  const bytes = new Uint8Array(28 + json.length + length);
  let at = 0;
  for (const { buffer } of pieces) {
    bytes.set(new Uint8Array(buffer), at);
    at += buffer.byteLength;
  }
  return bytes;
}

/** Corners of one spring, ring after ring, and its triangles; a ring keeps to what grinding leaves, so flats come by themselves. */
function meshOf({ coil, hand }: Body): [Float32Array<ArrayBuffer>, Uint32Array<ArrayBuffer>] {
  const rings = spansOf(coil, hand === "left").flatMap(({ from, to, at }, span) => {
    const steps = Math.ceil(ALONG * (to - from));
    return Array.from({ length: steps + 1 }, (_, step) => from + ((to - from) * step) / steps)
      .slice(span === 0 ? 0 : 1)
      .map((turn) => {
        const [middle, top] = [at(turn, 0, 0)[2], at(turn, 0, 1)[2]];
        const left = (room: number) => (coil.ground ? Math.max(0, Math.min(1, room / (top - middle))) : 1);
        const [above, below] = [left(coil.length - middle), left(middle)];
        return Array.from({ length: ABOUT }, (_, corner) => {
          const angle = (2 * Math.PI * (corner + 0.5)) / ABOUT;
          const up = Math.max(-below, Math.min(above, Math.sin(angle)));
          const [x, y, z] = at(turn, Math.sign(Math.cos(angle)) * Math.sqrt(1 - up * up), up);
          return [x / 1000, z / 1000, -y / 1000];
        });
      });
  });
  const triangles: number[] = [];
  const fan = (first: number, turned: boolean) => {
    for (let i = 1; i + 1 < ABOUT; i++) triangle(first, first + i + (turned ? 1 : 0), first + i + (turned ? 0 : 1));
  };
  // Seen from outside corners run against the clock; in a mirror the other way.
  const triangle = (a: number, b: number, c: number) => triangles.push(...(hand === "left" ? [a, c, b] : [a, b, c]));
  for (let first = 0; first < (rings.length - 1) * ABOUT; first += ABOUT) {
    for (let i = 0; i < ABOUT; i++) {
      const [here, next] = [first + i, first + ((i + 1) % ABOUT)];
      triangle(here, here + ABOUT, next + ABOUT);
      triangle(here, next + ABOUT, next);
    }
  }
  fan(0, false);
  fan((rings.length - 1) * ABOUT, true);
  return [new Float32Array(rings.flat(2)), new Uint32Array(triangles)];
}
