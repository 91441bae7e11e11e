import { type Body, GENERATED, GENERATOR, type Solid } from "./body.ts";
import { cubicThrough, type Point, piecesOver, type Span, spansOf } from "./wire.ts";

/** Adds an entity to the file and answers its name; the same text is one entity. */
type Add = (entity: string) => string;

/** An edge as a loop passes it. */
type Pass = readonly [edge: string, forward: boolean];

/**
 * Half a circle as a rational cubic: control points in radii outwards and upwards, and weights. The half under it goes on from it.
 */
const OVER = [
  [1, 0],
  [1, 2],
  [-1, 2],
  [-1, 0],
] as const;
const UNDER = OVER.map(([outwards, upwards]) => [-outwards, -upwards] as const);
const WEIGHTS = "1.,0.333333333333333,0.333333333333333,1.";

/**
 * One spring, or two in one another, as a STEP file: exact solids in millimetres for any CAD program.
 *
 * @param solid  the springs at one length
 * @returns ISO 10303-21 text by the application protocol AP214; it bears no date, so that the same solid gives the same bytes
 */
export function stepFile({ title, bodies }: Solid): string {
  const name = quoted(title);
  const lines = [
    "APPLICATION_CONTEXT('core data for automotive mechanical design processes')",
    "APPLICATION_PROTOCOL_DEFINITION('international standard','automotive_design',2010,#1)",
    "PRODUCT_CONTEXT('',#1,'mechanical')",
    `PRODUCT(${name},${name},${quoted(GENERATED)},(#3))`,
    "PRODUCT_RELATED_PRODUCT_CATEGORY('part',$,(#4))",
    "PRODUCT_DEFINITION_FORMATION('','',#4)",
    "PRODUCT_DEFINITION_CONTEXT('part definition',#1,'design')",
    "PRODUCT_DEFINITION('design','',#6,#7)",
    "PRODUCT_DEFINITION_SHAPE('','',#8)",
    "(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))",
    "(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))",
    "(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())",
    "UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(0.0001),#10,'distance_accuracy_value','')",
    "(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((#13))" +
      "GLOBAL_UNIT_ASSIGNED_CONTEXT((#10,#11,#12))REPRESENTATION_CONTEXT('',''))",
  ];
  const known = new Map<string, string>();
  const add: Add = (entity) => {
    const same = known.get(entity);
    if (same !== undefined) return same;
    known.set(entity, `#${lines.push(entity)}`);
    return `#${lines.length}`;
  };
  const solids = bodies.map((body) =>
    add(`MANIFOLD_SOLID_BREP(${quoted(body.name)},${add(`CLOSED_SHELL('',(${facesOf(body, add)}))`)})`),
  );
  add(`SHAPE_DEFINITION_REPRESENTATION(#9,${add(`ADVANCED_BREP_SHAPE_REPRESENTATION(${name},(${solids}),#14)`)})`);
  const properties = bodies.flatMap(({ name, properties }) =>
    properties.map(([what, value]) => [bodies.length === 1 ? what : `${name} ${what}`, value] as const),
  );
  for (const [what, value] of properties) {
    const own = add(`PROPERTY_DEFINITION(${quoted(what)},'user defined attribute',#8)`);
    add(`GENERAL_PROPERTY_ASSOCIATION('','',${add(`GENERAL_PROPERTY('',${quoted(what)},'user defined attribute')`)},${own})`);
    const held = add(`DESCRIPTIVE_REPRESENTATION_ITEM(${quoted(what)},${quoted(value)})`);
    add(`PROPERTY_DEFINITION_REPRESENTATION(${own},${add(`REPRESENTATION(${quoted(what)},(${held}),#14)`)})`);
  }
  return [
    "ISO-10303-21;\nHEADER;",
    `FILE_DESCRIPTION((${[title, ...properties.map((pair) => pair.join(": "))].map(quoted)}),'2;1');`,
    `FILE_NAME(${name},'',(''),(''),${quoted(GENERATOR)},${quoted(GENERATOR)},'');`,
    "FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 3 1 1 }'));\nENDSEC;\nDATA;",
    ...lines.map((entity, i) => `#${i + 1}=${entity};`),
    "ENDSEC;\nEND-ISO-10303-21;\n",
  ].join("\n");
}

/**
 * The faces of one spring, which close: every edge bounds two of them, passed once in each direction.
 *
 * The wire is two rows of faces, over and under its middle line, each half a circle that follows the helix as a cubic. The rows
 * meet on the outer and inner side of the coil, away from where turns touch. A ground end needs no cutting: the plane of the seat
 * meets the wire in a curve that is known, sin v = z / (r cos α), and that ends where the rows meet.
 */
function facesOf({ coil, hand }: Body, add: Add): string[] {
  const left = hand === "left";
  const spans = spansOf(coil, left);
  const [first, last] = [spans[0] as Span, spans.at(-1) as Span];
  /** A place on the ring about the wire where a span begins, or where the last one ends. */
  const ring = (i: number, outwards: number, upwards: number, ahead = 0) => {
    const span = spans[i];
    return span ? span.at(span.from, outwards, upwards, ahead) : last.at(last.to, outwards, upwards, ahead);
  };

  const point = (at: Point) => add(`CARTESIAN_POINT('',(${at.map(real)}))`);
  const direction = (from: Point, to: Point) => {
    const towards = to.map((part, axis) => part - (from[axis] as number));
    return add(`DIRECTION('',(${towards.map((part) => real(part / Math.hypot(...towards)))}))`);
  };
  const edge = (points: readonly Point[], curve: string) => {
    const [from, to] = [points[0], points.at(-1)].map((end) => add(`VERTEX_POINT('',${point(end as Point)})`));
    return add(`EDGE_CURVE('',${from},${to},${add(curve)},.T.)`);
  };
  const knots = (count: number) => {
    const places = Array.from({ length: count - 2 }, (_, i) => i);
    return [places.map((i) => (i % (count - 3) === 0 ? 4 : 1)), places.map((i) => `${i}.`)].map((list) => `(${list})`);
  };
  const spline = (points: readonly Point[]) =>
    edge(
      points,
      `B_SPLINE_CURVE_WITH_KNOTS('',3,(${points.map(point)}),.UNSPECIFIED.,.F.,.F.,${knots(points.length)},.UNSPECIFIED.)`,
    );
  const arc = (points: readonly Point[]) =>
    edge(
      points,
      `(BOUNDED_CURVE()B_SPLINE_CURVE(3,(${points.map(point)}),.UNSPECIFIED.,.F.,.F.)B_SPLINE_CURVE_WITH_KNOTS(${knots(4)},` +
        `.UNSPECIFIED.)CURVE()GEOMETRIC_REPRESENTATION_ITEM()RATIONAL_B_SPLINE_CURVE((${WEIGHTS}))REPRESENTATION_ITEM(''))`,
    );
  const chord = (from: Point, to: Point) =>
    edge([from, to], `LINE('',${point(from)},${add(`VECTOR('',${direction(from, to)},1.)`)})`);
  const surface = (columns: readonly (readonly Point[])[]) => {
    const rows = (columns[0] as readonly Point[]).map((_, i) => columns.map((column) => point(column[i] as Point)));
    const [repeats, places] = knots(rows.length);
    const net = rows.map((row) => `(${left ? row.reverse() : row})`);
    return (
      `(BOUNDED_SURFACE()B_SPLINE_SURFACE(3,3,(${net}),.UNSPECIFIED.,.F.,.F.,.F.)B_SPLINE_SURFACE_WITH_KNOTS(${repeats},(4,4),` +
      `${places},(0.,1.),.UNSPECIFIED.)GEOMETRIC_REPRESENTATION_ITEM()RATIONAL_B_SPLINE_SURFACE((${net.map(() => `(${WEIGHTS})`)}))` +
      "REPRESENTATION_ITEM('')SURFACE())"
    );
  };
  /** A face lies to the left of its loop, seen from outside; in a mirror loops and control points run the other way. */
  const face = (on: string, ...loop: readonly Pass[]) => {
    const passes = left ? loop.map(([edge, forward]): Pass => [edge, !forward]).reverse() : loop;
    const oriented = passes.map(([edge, forward]) => add(`ORIENTED_EDGE('',*,*,${edge},${forward ? ".T." : ".F."})`));
    return add(`ADVANCED_FACE('',(${add(`FACE_OUTER_BOUND('',${add(`EDGE_LOOP('',(${oriented}))`)},.T.)`)}),${add(on)},.T.)`);
  };
  const plane = (i: number, from: Point, to: Point) =>
    `PLANE('',${add(`AXIS2_PLACEMENT_3D('',${point(ring(i, 0, 0))},${direction(from, to)},${direction(ring(i, 0, 0), ring(i, 1, 0))})`)})`;

  /**
   * Where the plane of a seat cuts the wire, over the middle line that ends in it or under: half about the wire from an angle on.
   */
  const cut = ({ from, to, at }: Span, i: number, end: number, angle: number) => {
    const slope = (at(to, 0, 0)[2] - at(from, 0, 0)[2]) / (to - from);
    const reach = (at(end, 0, 1)[2] - at(end, 0, 0)[2]) / slope;
    const curve = (fraction: number) => {
      const [cos, sin] = [Math.cos(angle + Math.PI * fraction), Math.sin(angle + Math.PI * fraction)];
      return at(end - reach * sin, cos, sin);
    };
    const side = Math.cos(angle);
    return spline(cubicThrough(curve, 2 * piecesOver(1, coil), [ring(i, side, 0), ring(i, -side, 0)]));
  };
  const end = spans.length;
  const half = (shape: typeof UNDER | typeof OVER, i: number) =>
    arc(shape.map(([outwards, upwards]) => ring(i, outwards, upwards)));
  const rings = [...spans, last].map((_, i) => ({
    over: coil.ground && i === end ? cut(last, i, last.to, 0) : half(OVER, i),
    under: coil.ground && i === 0 ? cut(first, i, 0, Math.PI) : half(UNDER, i),
  }));
  const wire = spans.flatMap(({ from, to, at }, i) => {
    const column = ([outwards, upwards]: readonly [number, number]) =>
      cubicThrough((fraction) => at(from + fraction * (to - from), outwards, upwards), piecesOver(to - from, coil), [
        ring(i, outwards, upwards),
        ring(i + 1, outwards, upwards),
      ]);
    const [over, under] = [OVER.map(column), UNDER.map(column)];
    const [outer, inner] = [spline(over[0] as Point[]), spline(under[0] as Point[])];
    const [here, next] = [rings[i], rings[i + 1]] as [(typeof rings)[0], (typeof rings)[0]];
    return [
      face(surface(over), [outer, true], [next.over, true], [inner, false], [here.over, false]),
      face(surface(under), [inner, true], [next.under, true], [outer, false], [here.under, false]),
    ];
  });
  const { over, under } = rings[0] as (typeof rings)[0];
  const { over: overEnd, under: underEnd } = rings[end] as (typeof rings)[0];
  const startChord = coil.ground ? chord(ring(0, -1, 0), ring(0, 1, 0)) : under;
  const endChord = coil.ground ? chord(ring(end, 1, 0), ring(end, -1, 0)) : overEnd;
  const caps = [
    face(plane(0, ring(0, 0, 0, 1), ring(0, 0, 0)), [over, true], [startChord, true]),
    face(plane(end, ring(end, 0, 0), ring(end, 0, 0, 1)), [underEnd, false], [endChord, false]),
  ];
  if (!coil.ground) return [...wire, ...caps];
  return [
    ...wire,
    ...caps,
    face(plane(0, [0, 0, 1], [0, 0, 0]), [under, true], [startChord, false]),
    face(plane(end, [0, 0, 0], [0, 0, 1]), [overEnd, false], [endChord, true]),
  ];
}

/** A real number of the file; lengths to a millionth of a millimetre. */
function real(value: number): string {
  const text = value.toFixed(6).replace(/0+$/, "");
  return Number(text) === 0 ? "0." : text;
}

/** A string of the file: printable ASCII as it is, all else by its code. */
function quoted(text: string): string {
  const coded = text
    .replace(/['\\]/g, "$&$&")
    .replace(/[^ -~]/gu, (sign) => `\\X4\\${sign.codePointAt(0)?.toString(16).toUpperCase().padStart(8, "0")}\\X0\\`);
  return `'${coded}'`;
}
