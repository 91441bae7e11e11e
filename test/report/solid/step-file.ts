import { alongAxis, type Coil } from "../../../src/report/drawing/helix.ts";

export type Point = readonly [number, number, number];

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Point, b: Point) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Point, b: Point): Point => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

/** A STEP file of ours, read by its text alone: entities by name, and what stands in their parentheses. */
export class StepFile {
  readonly entities: ReadonlyMap<string, string>;

  constructor(text: string) {
    const data = text.slice(text.indexOf("DATA;"));
    this.entities = new Map([...data.matchAll(/^(#\d+)=(.*);$/gm)].map(([, name, entity]) => [name as string, entity as string]));
  }

  get(name: string): string {
    const entity = this.entities.get(name);
    if (entity === undefined) throw new Error(`${name} is not in the file`);
    return entity;
  }

  /** Names of the entities of one kind. */
  all(kind: string): string[] {
    return [...this.entities].filter(([, entity]) => entity.startsWith(`${kind}(`)).map(([name]) => name);
  }

  /** What an entity names, in order. */
  named(name: string): string[] {
    return [...this.get(name).matchAll(/#\d+/g)].map(([one]) => one);
  }

  point(name: string): Point {
    return (/\(([^()]*)\)\)$/.exec(this.get(name))?.[1] ?? "").split(",").map(Number) as unknown as Point;
  }

  shells(): string[][] {
    return this.all("CLOSED_SHELL").map((shell) => this.named(shell));
  }

  /** A face as its surface, whether it faces as that does, and its loop of edges with whether each is passed forward. */
  face(name: string) {
    const [bound = "", surface = ""] = this.named(name);
    const loop = this.named(this.named(bound)[0] ?? "").map((oriented) => {
      const edge = this.named(oriented)[0] ?? "";
      return { edge, forward: this.get(oriented).endsWith(".T.)") };
    });
    return { surface, sameSense: this.get(name).endsWith(".T.)"), boundForward: this.get(bound).endsWith(".T.)"), loop };
  }

  edge(name: string) {
    const [from = "", to = "", curve = ""] = this.named(name);
    return { from, to, curve };
  }

  /** Points along an edge, from its start to its end. */
  edgePoints(name: string, count = 200): Point[] {
    const { from, to, curve } = this.edge(name);
    if (this.get(curve).startsWith("LINE(")) {
      const [start, end] = [from, to].map((vertex) => this.point(this.named(vertex)[0] ?? "")) as [Point, Point];
      const at = (share: number) => start.map((part, axis) => part + share * ((end[axis] ?? 0) - part)) as unknown as Point;
      return Array.from({ length: count + 1 }, (_, i) => at(i / count));
    }
    const { control, knots } = this.spline(curve);
    const last = knots.at(-1) ?? 0;
    return Array.from({ length: count + 1 }, (_, i) => curveAt(control, knots, (last * i) / count));
  }

  /** A curve's control points with weights, and its knots. */
  private spline(name: string) {
    const text = this.get(name);
    const points = /,3,\((#[^)]*)\)|CURVE\(3,\((#[^)]*)\)/.exec(text);
    const control = (points?.[1] ?? points?.[2] ?? "").split(",").map((point) => this.point(point));
    const weights = /RATIONAL_B_SPLINE_CURVE\(\(([^)]*)\)/.exec(text)?.[1]?.split(",").map(Number);
    const [, repeats = "", places = ""] = /\(([\d,]+)\),\(([\d.,]+)\),\.UNSPECIFIED\.\)/.exec(text) ?? [];
    return { control: control.map((at, i): Weighted => [at, weights?.[i] ?? 1]), knots: knotsOf(repeats, places) };
  }

  /** The surface of a name: its knots in u and, for a u, a half circle in v with its normal; null for a plane. */
  surface(name: string) {
    const text = this.get(name);
    if (text.startsWith("PLANE(")) return null;
    const net = [...(/SURFACE\(3,3,\((.*?\))\),/.exec(text)?.[1] ?? "").matchAll(/\(([^)]*)\)/g)];
    const weights = [...(/RATIONAL_B_SPLINE_SURFACE\(\((.*?)\)\)REP/.exec(text)?.[1] ?? "").matchAll(/\(([^)]*)\)/g)];
    const rows = net.map(([, row], i) => {
      const own = (weights[i]?.[1] ?? "").split(",").map(Number);
      return (row ?? "").split(",").map((point, j) => homogeneous([this.point(point), own[j] ?? Number.NaN]));
    });
    const columns = [0, 1, 2, 3].map((j) => rows.map((row) => row[j] as Four));
    const numbers = /SURFACE_WITH_KNOTS\(\(([\d,]+)\),\(4,4\),\(([\d.,]+)\),\(0\.,1\.\)/.exec(text);
    const knots = knotsOf(numbers?.[1] ?? "", numbers?.[2] ?? "");
    const section = (u: number) => {
      const [here, before, after] = [u, u - STEP, u + STEP].map((one) => columns.map((column) => blend(column, knots, one)));
      const at = (v: number) => project(blend(here as Four[], BEZIER, v));
      const normal = (v: number) => {
        const [a, b] = [after, before].map((row) => project(blend(row as Four[], BEZIER, v))) as [Point, Point];
        const area = cross(minus(a, b), minus(at(v + STEP), at(v - STEP)));
        return area.map((part) => part / (4 * STEP * STEP)) as unknown as Point;
      };
      return { at, normal };
    };
    return { knots, section };
  }

  /** The outward axis of a plane. */
  axis(surface: string): Point {
    return this.point(this.named(this.named(surface)[0] ?? "")[1] ?? "");
  }
}

type Weighted = readonly [at: Point, weight: number];
type Four = readonly [number, number, number, number];

const BEZIER = [0, 0, 0, 0, 1, 1, 1, 1];

/** Between places whose difference stands for a derivative. */
const STEP = 1e-5;

function knotsOf(repeats: string, places: string): number[] {
  const at = places.split(",").map(Number);
  return repeats.split(",").flatMap((count, i) => new Array<number>(Number(count)).fill(at[i] ?? Number.NaN));
}

const homogeneous = ([[x, y, z], weight]: Weighted): Four => [x * weight, y * weight, z * weight, weight];

const project = ([x, y, z, weight]: Four): Point => [x / weight, y / weight, z / weight];

/** A point of a cubic spline by de Boor's algorithm; beyond the ends the last piece goes on. */
function blend(control: readonly Four[], knots: readonly number[], u: number): Four {
  let span = 3;
  while (span < control.length - 1 && u >= (knots[span + 1] as number)) span++;
  let points = control.slice(span - 3, span + 1);
  for (let degree = 3; degree > 0; degree--) {
    points = points.slice(1).map((next, i): Four => {
      const from = knots[span - degree + 1 + i] as number;
      const share = (u - from) / ((knots[span + 1 + i] as number) - from);
      const last = points[i] as Four;
      const mixed = (axis: 0 | 1 | 2 | 3) => last[axis] + share * (next[axis] - last[axis]);
      return [mixed(0), mixed(1), mixed(2), mixed(3)];
    });
  }
  return points[0] as Four;
}

function curveAt(control: readonly Weighted[], knots: readonly number[], u: number): Point {
  return project(blend(control.map(homogeneous), knots, u));
}

/** What is wrong with the topology of a file, in words; nothing where each shell closes. */
export function lint(text: string): string[] {
  const file = new StepFile(text);
  const faults: string[] = [];
  for (const name of file.entities.keys()) {
    for (const other of file.named(name))
      if (!file.entities.has(other)) faults.push(`${name} names ${other}, which is not there`);
  }
  if (faults.length > 0) return faults;
  const reached = new Set<string>();
  const reach = (name: string) => {
    if (reached.has(name) || !file.entities.has(name)) return;
    reached.add(name);
    for (const other of file.named(name)) reach(other);
  };
  for (const shell of file.all("CLOSED_SHELL")) reach(shell);
  for (const kind of ["ADVANCED_FACE", "EDGE_CURVE", "ORIENTED_EDGE", "VERTEX_POINT"]) {
    for (const name of file.all(kind)) if (!reached.has(name)) faults.push(`${name} is in no shell`);
  }
  for (const faces of file.shells()) {
    const passes = new Map<string, number[]>();
    const vertices = new Set<string>();
    for (const name of faces) {
      const { loop, sameSense, boundForward } = file.face(name);
      if (!sameSense || !boundForward) faults.push(`${name} faces the other way`);
      const ends = loop.map(({ edge, forward }) => {
        const { from, to } = file.edge(edge);
        return forward ? [from, to] : [to, from];
      });
      for (const [i, [from, to]] of ends.entries()) {
        vertices.add(from as string);
        if (to !== ends[(i + 1) % ends.length]?.[0]) faults.push(`the loop of ${name} breaks after its edge ${i + 1}`);
      }
      for (const { edge, forward } of loop) passes.set(edge, [...(passes.get(edge) ?? []), forward ? 1 : -1]);
    }
    for (const [edge, ways] of passes) {
      if (ways.length !== 2 || ways[0] === ways[1]) faults.push(`${edge} is not passed once in each direction`);
      const { from, to } = file.edge(edge);
      const points = file.edgePoints(edge, 2);
      const gap = [from, to].map((vertex, i) => {
        const off = minus(file.point(file.named(vertex)[0] ?? ""), points[2 * i] as Point);
        return Math.sqrt(dot(off, off));
      });
      if (Math.max(...gap) > 1e-9) faults.push(`${edge} does not end where its vertices are`);
    }
    if (vertices.size - passes.size + faces.length !== 2) faults.push("vertices, edges and faces are not those of one ball");
  }
  return faults;
}

/** Places and weights of Gauss's rules of two and four points, from 0 to 1. */
const TWO = [0.5 - Math.sqrt(1 / 12), 0.5 + Math.sqrt(1 / 12)].map((place) => [place, 0.5] as const);
const FOUR = [
  [0.06943184420297371, 0.17392742256872692],
  [0.33000947820757187, 0.3260725774312731],
  [0.6699905217924281, 0.3260725774312731],
  [0.9305681557970262, 0.17392742256872692],
] as const;

/** What of a volume lies behind a piece of its surface: the flux of (x, y, 0) / 2, of which seats have none. */
const flux = (at: Point, area: Point) => (at[0] * area[0] + at[1] * area[1]) / 2;

/** The shape of one shell as its surfaces have it: every face is evaluated, against the program's own helix. */
export function readBack(text: string, coil: Coil, left: boolean, shell = 0) {
  const file = new StepFile(text);
  let deviation = 0;
  let volume = 0;
  let inwards = 0;
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  const see = (at: Point) => {
    for (const axis of [0, 1, 2] as const) {
      low[axis] = Math.min(low[axis] as number, at[axis]);
      high[axis] = Math.max(high[axis] as number, at[axis]);
    }
  };
  const middleOf = middleLine(coil, left);
  for (const name of file.shells()[shell] ?? []) {
    const { surface, loop, sameSense } = file.face(name);
    const tube = file.surface(surface);
    if (tube === null) {
      const around = loop.flatMap(({ edge, forward }) => {
        const points = file.edgePoints(edge);
        return (forward ? points : points.toReversed()).slice(1);
      });
      for (const at of around) see(at);
      // The fan of triangles from one corner, each by the place of its middle.
      const axis = file.axis(surface);
      const [hub] = around as [Point];
      for (let i = 1; i + 1 < around.length; i++) {
        const [a, b] = [around[i], around[i + 1]] as [Point, Point];
        const area = cross(minus(a, hub), minus(b, hub));
        volume += flux([hub[0] + a[0] + b[0], hub[1] + a[1] + b[1], 0], area) / 6;
        if (i === 1 && around.length > 2) inwards += dot(areaOf(around), axis) > 0 === sameSense ? 0 : 1;
      }
      continue;
    }
    for (const { edge } of loop) for (const at of file.edgePoints(edge, 400)) see(at);
    const sense = sameSense ? 1 : -1;
    for (const [i, from] of tube.knots.entries()) {
      const to = tube.knots[i + 1] ?? from;
      if (to <= from) continue;
      for (const [share, weight] of TWO) {
        const { at: on, normal: normalAt } = tube.section(from + share * (to - from));
        for (const [start, end] of inside(on, coil)) {
          for (const part of [0, 1]) {
            for (const [along, rule] of FOUR) {
              const v = start + ((end - start) * (part + along)) / 2;
              const [at, normal] = [on(v), normalAt(v)];
              volume += sense * flux(at, normal) * weight * rule * (to - from) * ((end - start) / 2);
              const off = minus(at, middleOf(at));
              deviation = Math.max(deviation, Math.abs(Math.sqrt(dot(off, off)) - coil.wireDiameter / 2));
              if (sense * dot(normal, off) < 0) inwards++;
              see(at);
            }
          }
        }
      }
    }
  }
  return { deviation, volume, inwards, low, high };
}

function areaOf(around: readonly Point[]): Point {
  const hub = around[0] as Point;
  return around.slice(1, -1).reduce<Point>(
    (sum, a, i) => {
      const part = cross(minus(a, hub), minus(around[i + 2] as Point, hub));
      return [sum[0] + part[0], sum[1] + part[1], sum[2] + part[2]];
    },
    [0, 0, 0],
  );
}

/** The parts of v from 0 to 1 over which a half circle lies between the seats of a ground coil. */
function inside(at: (v: number) => Point, coil: Coil): [number, number][] {
  const room = (v: number) => Math.min(at(v)[2], coil.length - at(v)[2]);
  if (!coil.ground || room(0.5) >= 0) return [[0, 1]];
  const border = (from: number) => {
    let [shown, gone] = [from, 0.5];
    for (let i = 0; i < 50; i++) {
      const middle = (shown + gone) / 2;
      if (room(middle) >= 0) shown = middle;
      else gone = middle;
    }
    return shown;
  };
  return [
    [0, border(0)],
    [border(1), 1],
  ];
}

/** The place of the helix that is nearest to a point. */
function middleLine(coil: Coil, left: boolean): (at: Point) => Point {
  const along = alongAxis(coil);
  const place = (turn: number): Point => [
    (coil.meanDiameter / 2) * Math.cos(2 * Math.PI * turn),
    (left ? -1 : 1) * (coil.meanDiameter / 2) * Math.sin(2 * Math.PI * turn),
    along(turn),
  ];
  return (at) => {
    const far = (turn: number) => {
      const off = minus(at, place(turn));
      return dot(off, off);
    };
    const share = (((Math.atan2(left ? -at[1] : at[1], at[0]) / (2 * Math.PI)) % 1) + 1) % 1;
    const turns = Array.from({ length: Math.ceil(coil.totalTurns) + 2 }, (_, i) => i - 1 + share);
    let turn = turns.reduce((best, one) => (Math.abs(along(one) - at[2]) < Math.abs(along(best) - at[2]) ? one : best));
    let step = 0.05;
    // Steps of a parabola through three places, which end where its foot is.
    for (let i = 0; i < 4; i++) {
      const [before, here, after] = [far(turn - step), far(turn), far(turn + step)];
      turn += (step * (before - after)) / (2 * (before - 2 * here + after));
      step /= 8;
    }
    return place(turn);
  };
}

/** How near the middle line of one turn comes to that of the next. */
export function leastBetween(coil: Coil): number {
  const along = alongAxis(coil);
  let least = Infinity;
  for (let turn = 0; turn <= coil.totalTurns - 1; turn += 0.05) {
    for (let off = -0.2; off <= 0.2 && turn + 1 + off <= coil.totalTurns; off += 0.001) {
      const chord = coil.meanDiameter * Math.sin(Math.PI * off);
      least = Math.min(least, Math.hypot(chord, along(turn + 1 + off) - along(turn)));
    }
  }
  return least;
}

/** What the wire of a coil fills: its section times its length, less what lies beyond the seats. */
export function exactVolume(coil: Coil): number {
  const along = alongAxis(coil);
  const radius = coil.wireDiameter / 2;
  const around = Math.PI * coil.meanDiameter;
  const steps = 40_000;
  const turn = (i: number) => (coil.totalTurns * (i + 0.5)) / steps;
  let volume = 0;
  for (let i = 0; i < steps; i++) {
    const slope = (along(turn(i) + 1e-5) - along(turn(i) - 1e-5)) / 2e-5;
    const wire = Math.hypot(around, slope);
    let section = Math.PI * radius * radius;
    if (coil.ground) {
      for (const room of [along(turn(i)), coil.length - along(turn(i))]) {
        // A chord so far from the centre of the section cuts this segment off it.
        const off = Math.min(1, Math.max(0, (room * wire) / around / radius));
        section -= radius * radius * (Math.acos(off) - off * Math.sqrt(1 - off * off));
      }
    }
    volume += (section * wire * coil.totalTurns) / steps;
  }
  return volume;
}
