/**
 * The vocabulary of coilsieve: types only, plain immutable data, SI throughout (m, N, Pa, kg, Hz, K, rad).
 * Every room may import this file; it imports nothing.
 */

/** A range with either end open. */
export interface Window {
  readonly min?: number;
  readonly max?: number;
}

/** A window worked out for the engine: open ends are 0 and Infinity. */
export interface Span {
  readonly min: number;
  readonly max: number;
}

/**
 * A quantity as a requirement states it. Exact: nominal = min = max. With a tolerance: nominal inside min..max, and the
 * design aims at the nominal. `{ min, max }`: no nominal, the design is free in the window.
 */
export interface Quantity extends Window {
  readonly nominal?: number;
}

/** A length of the spring with the force that is asked of it there. */
export interface LoadPoint {
  readonly name: string;
  /** Length of the spring at this point, m. */
  readonly length: number;
  /** Force at this point, N. */
  readonly force: Quantity;
}

/** What is asked of load; each kind reduces to a window of rate and, for a given rate, of free length. */
export type Load =
  | { readonly kind: "forceAtDeflection"; readonly force: Quantity; readonly deflection: number }
  | { readonly kind: "points"; readonly points: readonly LoadPoint[] }
  | { readonly kind: "rateAndPoint"; readonly rate: Quantity; readonly point: LoadPoint }
  | { readonly kind: "rateAndLargestForce"; readonly rate: Quantity; readonly largestForce: number };

/** Diametral clearance: a length in m, or a share of the bore or rod. */
export type Clearance = { readonly length: number } | { readonly share: number };

/** The room that the spring works in. */
export interface Envelope {
  /** The least hole the spring works in, m. */
  readonly bore?: number;
  /** The largest rod the spring works over, m. */
  readonly rod?: number;
  readonly clearance?: Clearance;
  readonly outsideDiameter?: Window;
  readonly insideDiameter?: Window;
  readonly freeLength?: Window;
  readonly solidLength?: Window;
}

/** One wire that can be bought. */
export interface Wire {
  readonly label: string;
  /** m */
  readonly diameter: number;
  /** Name of the series or stock file it stands in. */
  readonly series: string;
  /** Names of the materials it is sold in; absent: any. */
  readonly soldIn?: readonly string[];
  /** Price per kg in the stock file's own currency; absent: the material's relative cost counts. */
  readonly price?: number;
}

/** A series of wire sizes, rising in diameter. */
export interface WireSeries {
  readonly name: string;
  readonly source: string;
  readonly wires: readonly Wire[];
  /** As the brief names its file, where it is not a shipped one. */
  readonly path?: string;
  /** What its prices are in, as the file says; absent: it has none, or does not say. */
  readonly currency?: string;
}

/** How a wire is made, by which a practice picks its share of strength. */
export type MaterialClass = "cold drawn" | "hardened and tempered" | "austenitic" | "non-ferrous";

/** E and G, Pa. */
export interface Moduli {
  readonly youngsModulus: number;
  readonly shearModulus: number;
}

/** E and G up to and including a wire diameter; the last row may have no upper end. */
export interface ModuliRow extends Moduli {
  readonly upTo?: number;
}
/**
 * How far a strength of a file may be trusted: rows in print and in sequence; one maker's limits or an inference; a copy with
 * defective cells, placed by their sequence; no copy read.
 */
export type Confidence = "high" | "medium" | "low" | "memory";

/** Rows of the strength that a standard guarantees, rising in diameter. */
export interface StrengthRows {
  readonly between: "interpolate" | "next-row";
  readonly rows: readonly {
    readonly diameter: number;
    readonly strength: number;
    /** Where the row was not read but follows from printed ones. */
    readonly inferred?: true;
  }[];
  /** Absent: the file does not say. */
  readonly confidence?: Confidence;
}

/** Sut = value / (d / at)^exponent, for min < d <= max (the first piece includes its min). */
export interface StrengthFit {
  readonly at: number;
  readonly value: number;
  readonly exponent: number;
  readonly diameter: { readonly min: number; readonly max: number };
  /** Absent: the file does not say. */
  readonly confidence?: Confidence;
}

/** Tensile strength of a material in each of the forms that its file gives. */
export interface Strength {
  readonly minimum?: StrengthRows;
  /** Pieces that join, rising in diameter. */
  readonly fit?: readonly StrengthFit[];
  /** One strength that the file states for all sizes in its range. */
  readonly constant?: {
    readonly value: number;
    readonly diameter: { readonly min: number; readonly max: number };
    readonly confidence?: Confidence;
  };
}

/** A wire material as its catalog file states it, in SI. */
export interface Material {
  readonly name: string;
  readonly source: string;
  /** Picks the practice's share of strength; absent only where `allowable` is stated. */
  readonly class?: MaterialClass;
  /** kg/m³ */
  readonly density: number;
  readonly moduli: readonly ModuliRow[];
  /** Share of both moduli that goes for each kelvin above 20 °C, with its source; absent: not known. */
  readonly modulusLoss?: { readonly perKelvin: number; readonly source: string };
  readonly strength: Strength;
  /** Share of tensile strength allowed in torsion; absent: the class's share in the practice. */
  readonly allowable?: { readonly asWound: number; readonly setRemoved: number };
  /** Plus-minus on wire diameter up to and including a size, m. */
  readonly wireTolerance?: readonly { readonly upTo: number; readonly plusMinus: number }[];
  /** Highest service temperature, K. */
  readonly temperature: { readonly max: number };
  /** Names of the series that it is sold in, of a file of one's own; absent: every series, so far as a stock does not deny it. */
  readonly series?: readonly string[];
  /** Cost per mass relative to hard-drawn carbon wire; pure number. */
  readonly relativeCost: number;
  /** Where a figure besides strength is from memory, and other things a reader of the result should know. */
  readonly notes: readonly string[];
  /** Corrected shear stress pairs (lower, upper), Pa, at a life; for the practice that reads Goodman rows. */
  readonly fatigue?: {
    readonly source: string;
    readonly cycles: number;
    readonly unpeened?: readonly (readonly [number, number])[];
    readonly peened?: readonly (readonly [number, number])[];
  };
  /** Weights of operations in the cost proxy, where a brief gives none. */
  readonly operations?: Partial<OperationCosts>;
  /** Published points of lost load; absent: not known. */
  readonly relaxation?: {
    readonly source: string;
    readonly points: readonly RelaxationPoint[];
  };
  /** As the brief names its file, where it is not a shipped one. */
  readonly path?: string;
}

/** What operations add to the cost proxy of one spring, in its own unit: kg of hard-drawn wire, or the money of stock prices. */
export interface OperationCosts {
  readonly grind: number;
  readonly set: number;
  readonly peen: number;
  readonly relieve: number;
}

/** Share of load lost at a temperature, K, a shear stress, Pa, after a time, s. */
export interface RelaxationPoint {
  readonly temperature: number;
  readonly stress: number;
  readonly time: number;
  readonly loss: number;
}

/** An end style as the constants of the end table. */
export interface EndStyle {
  readonly name: string;
  /** Turns that do not deflect: Na = Nt - deadTurns. */
  readonly deadTurns: number;
  /** Solid length = (Nt + solidExtra) d. */
  readonly solidExtra: number;
  /** Free length = p (Na + pitchTurns) + pitchWires d. */
  readonly pitchTurns: number;
  readonly pitchWires: number;
  readonly closed: boolean;
  readonly ground: boolean;
  /** As the brief names its file, where it is not a shipped one. */
  readonly path?: string;
}

/**
 * What the names in a brief resolve to; `from` is the file that names them, for names that are paths beside it. Throws a
 * `ProblemError`; a problem without a file is about the name itself, and the caller adds where that stands.
 */
export interface Lookup {
  readonly series: (name: string, from: string) => WireSeries;
  readonly material: (name: string, from: string) => Material;
  readonly ends: (name: string, from: string) => EndStyle;
}

/** Total turns come in whole multiples of this part of a turn, or follow from rate and mean diameter. */
export type TurnsStep = "any" | "quarter" | "half" | "whole";

/** Mean diameters are multiples of the step, m, or the best over the reals. */
export type MeanDiameterSweep = "exact" | { readonly step: number };

/** What is tried: every wire in every material with every end style. */
export interface Sweep {
  readonly wires: readonly WireSeries[];
  readonly materials: readonly Material[];
  readonly ends: readonly EndStyle[];
  readonly turns: TurnsStep;
  readonly meanDiameter: MeanDiameterSweep;
  /** Reported free lengths are multiples of the step, m, where those that pass hold one; absent: not rounded. */
  readonly freeLength?: { readonly step: number };
}

/** How the ends of the spring are held, which decides when it buckles. */
export type Seats = "parallel plates" | "plate and pivot" | "pivots" | "clamped and free" | "guided";

/** Whether the far end of seats `clamped and free`, free to move sideways, stays on a seat or swings along the axis. */
export type FarEnd = "on a seat" | "free";

/** How the spring is used. */
export interface Service {
  readonly seats: Seats;
  /** Present where the seats are `clamped and free`. */
  readonly farEnd?: FarEnd;
  readonly set: "as wound" | "removed";
  readonly surface: "unpeened" | "peened";
  readonly strength: "minimum" | "fit";
  readonly cycles?: number;
  /** Hz */
  readonly frequency?: number;
  /** K */
  readonly temperature?: number;
  /** Absent: no springs are drawn. */
  readonly scatter?: Scatter;
}

/** How made springs vary about the design; plus-minus each. */
export interface Scatter {
  /** Springs drawn for each design; a whole number. */
  readonly draws: number;
  /** `normal`: the tolerance is three standard deviations, and none lies beyond it; `uniform`: anywhere within it alike. */
  readonly shape: "normal" | "uniform";
  /** A whole number below 2^32. */
  readonly seed: number;
  /** Of the coil diameter and the free length where they are not stated. */
  readonly grade: ToleranceGrade;
  /** m; absent: of the material's standard. */
  readonly wireDiameter?: number;
  /** On the mean diameter, m; absent: by the grade. */
  readonly coilDiameter?: number;
  /** m; absent: by the grade. */
  readonly freeLength?: number;
  /** Of total and active turns alike; pure number. */
  readonly turns: number;
  /** Share of the shear modulus. */
  readonly modulus: number;
}

/** A published factor on the shear stress, for curvature and direct shear. */
export type StressFactorName = "none" | "direct" | "bergstrasser" | "wahl";

/** Room that must be left before solid at the largest working deflection. */
export type ClashAllowance =
  | { readonly ofDeflection: number }
  | { readonly ofSolidLength: number }
  | { readonly length: number }
  /** EN 13906-1: Sa = n (0.0015 D²/d + 0.1 d) times this factor. */
  | { readonly minimumGap: number };

/** An upper bound on shear stress: stated, or a safety against the allowable share of strength. */
export type StressLimit = { readonly max: number } | { readonly safety: number };

/** The limits, in the order in which a candidate falls. */
export type LimitName =
  | "wire"
  | "temperature"
  | "turns"
  | "solidLength"
  | "index"
  | "outsideDiameter"
  | "insideDiameter"
  | "rate"
  | "freeLength"
  | "pitch"
  | "hotForce"
  | "clash"
  | "workingStress"
  | "solidStress"
  | "fatigue"
  | "buckling"
  | "surge"
  | "loadTolerance";

/**
 * The line through the strengths that springs endured in cyclic duty; `life`: a Goodman line through the share of tensile strength that
 * they endure from nothing for the cycles asked.
 */
export type FatigueLine = "goodman" | "gerber" | "sines" | "life";

/** A class of manufacturing tolerance; `commercial` is the one class of the inch trade's tables. */
export type ToleranceGrade = 1 | 2 | 3 | "commercial";

/** Thresholds, resolved: what the brief gives, else the practice's default. */
export interface Limits {
  readonly index: Window | "off";
  readonly turns: Window | "off";
  readonly clash: ClashAllowance | "off";
  readonly workingStress: (StressLimit & { readonly factor: StressFactorName }) | "off";
  readonly solidStress: StressLimit | "off";
  readonly buckling: { readonly safety: number } | "off";
  readonly surge: { readonly multiple: number } | "off";
  /** Asked only in cyclic duty. */
  readonly fatigue: { readonly safety: number; readonly line: FatigueLine } | "off";
  /** What the maker may miss by, held against the load windows; off unless a grade is asked. */
  readonly loadTolerance: { readonly grade: ToleranceGrade } | "off";
  /** Limits that the envelope, the service or the catalogs set, lifted by the brief. */
  readonly lifted: readonly LimitName[];
}

/** The figures that springs can be ranked by, the smallest first but for the safety. */
export type MeritName = "mass" | "outsideDiameter" | "relativeCost" | "freeLength" | "solidSafety";

/** The published practices that can answer for a spring. */
export type PracticeName = "handbook" | "en13906";

/** What a number measures; decides its unit on paper. */
export type Dimension =
  | "length"
  | "force"
  | "rate"
  | "stress"
  | "mass"
  | "density"
  | "frequency"
  | "temperature"
  | "time"
  | "angle"
  | "share"
  | "number"
  | "price";

/** One quantity of the brief as its author wrote it. */
export interface Asked {
  readonly key: string;
  /** The author's own text, never re-formatted. */
  readonly text: string;
  readonly dimension: Dimension;
  /** SI */
  readonly value: number;
}

/** A value that the practice supplied because the brief is silent. */
export interface DefaultTaken {
  readonly key: string;
  /** As it would be written in a brief. */
  readonly text: string;
  readonly source: string;
}

/** The units in which a brief's load is written, and in which its results are shown. */
export interface Units {
  readonly length: "mm" | "in";
  readonly force: "N" | "lbf";
}

/** What a maker may adjust to meet the forces. */
export type FreeParameter = "free length" | "turns" | "wire" | "coil diameter";

/** What an order says beside the spring itself. Nothing stands in where it is silent. */
export interface Order {
  readonly hand?: "right" | "left" | "either";
  /** The diameter that the maker must hold. */
  readonly governing?: "outside" | "inside" | "mean";
  readonly free?: readonly FreeParameter[];
  /** Springs; a whole number. */
  readonly quantity?: number;
  readonly finish?: string;
  /** Number of the customer's drawing. */
  readonly drawing?: string;
  readonly notes?: string;
}

/** A requirement, resolved to SI, with the catalog entries it chose. */
export interface Brief {
  readonly title: string;
  readonly practice: PracticeName;
  readonly load: Load;
  readonly envelope: Envelope;
  readonly sweep: Sweep;
  readonly service: Service;
  readonly limits: Limits;
  /** Weights of operations in the cost proxy; those left out are the material's, else nothing. */
  readonly cost: Partial<OperationCosts>;
  readonly rank: readonly MeritName[];
  /** Present where the best by `rank` are to be ranked again by their yield; then their scatter is asked. */
  readonly yieldFirst?: true;
  /** Present where two springs, one inside the other, are to share the load. */
  readonly nested?: 2;
  /** Absent: the brief says nothing of an order. */
  readonly order?: Order;
  readonly units: Units;
  readonly asked: readonly Asked[];
  readonly defaults: readonly DefaultTaken[];
}

/** An existing or quoted spring as its data give it: enough to settle it, and perhaps more, which may disagree. */
export interface GivenDesign {
  readonly material: Material;
  readonly wire: Wire;
  readonly ends: EndStyle;
  /** m; one of the three diameters at least. */
  readonly outsideDiameter?: number;
  readonly insideDiameter?: number;
  readonly meanDiameter?: number;
  /** Pure number; one of the two at least, unless the rate is given. */
  readonly totalTurns?: number;
  readonly activeTurns?: number;
  /** m; absent: as the load sets it. */
  readonly freeLength?: number;
  /** Measured or quoted, N/m. */
  readonly rate?: number;
}

/** A requirement with the one spring to be judged by it; `sweep` holds that spring's own wire, material and ends. */
export interface CheckBrief extends Brief {
  readonly design: GivenDesign;
}

/** What singles out one spring among those a brief walks; indexes into the brief's lists. */
export interface Choice {
  readonly material: number;
  readonly wire: Wire;
  readonly ends: number;
  readonly totalTurns: number;
  /** m */
  readonly meanDiameter: number;
  /** m; absent: the one that is reported of those that pass. */
  readonly freeLength?: number;
}

/** One spring at a load point, SI. */
export interface DesignPoint {
  readonly name: string;
  readonly length: number;
  readonly deflection: number;
  readonly force: number;
  readonly stress: number;
  /** Deflection over deflection to solid. */
  readonly shareOfDeflection: number;
}

/** What a reader of one design should know, though no limit is broken. */
export type CautionName =
  | "steepPitch"
  | "thinGround"
  | "bucklesBeforeSolid"
  | "bucklesInWork"
  | "strengthFromMemory"
  | "strengthInferred"
  | "lifeFromMemory"
  | "askRelaxation"
  | "mayTouchBore"
  | "mayTouchRod"
  | "noGradeHolds"
  | "tolerancesNotKnown";

/** The stresses of cyclic duty, corrected as the practice says. */
export interface CyclicDuty {
  readonly leastForce: number;
  readonly greatestForce: number;
  readonly stressAmplitude: number;
  readonly meanStress: number;
}

/** The spring at its service temperature; it is wound and tested at room temperature. */
export interface HotFigures {
  readonly temperature: number;
  /** null: how the modulus falls is not known for this material. */
  readonly shearModulus: number | null;
  readonly youngsModulus: number | null;
  /** Where the fall of the moduli is from; null: not known for this material. */
  readonly modulusSource: string | null;
  readonly rate: number | null;
  /** Force at each load point, N. */
  readonly forces: readonly (number | null)[];
  /** Share of load lost, from a published point at least as hot and as stressed; null: not known for this material. */
  readonly relaxation: number | null;
  /** Time under load after which it is lost, s; absent where it is not known. */
  readonly relaxationTime?: number;
}

/** What the maker may miss by: plus-minus; null where the practice's tables do not reach. */
export interface ToleranceFigures {
  /** The grade asked, else the practice's usual one. */
  readonly grade: ToleranceGrade;
  readonly wireDiameter: number | null;
  /** Whose tolerance on the wire that is: the material's standard, or the one that the practice falls back on. */
  readonly wireSource: string | null;
  readonly coilDiameter: number | null;
  readonly freeLength: number | null;
  readonly points: readonly PointTolerance[];
  /**
   * The coarsest grade that keeps every point inside its window; null: none does; `notKnown`: the practice's tables do not reach
   * this spring; absent: no window is asked.
   */
  readonly coarsestGrade?: ToleranceGrade | "notKnown" | null;
  /** Room in the bore with the spring solid at its largest diameter, m; absent without a bore. */
  readonly boreRoom?: number | null;
  /** Room over the rod at the smallest inside diameter, m; absent without a rod. */
  readonly rodRoom?: number | null;
}

/** What a maker may miss by at a load point. */
export interface PointTolerance {
  readonly name: string;
  /** Plus-minus on the force by the grade's own rule, N. */
  readonly force: number | null;
  /** Worst case, every dimension and the modulus at the wrong end at once, N: not a likely spread. */
  readonly leastForce: number | null;
  readonly greatestForce: number | null;
}

/** How a figure of drawn springs is spread, SI. */
export interface Spread {
  readonly mean: number;
  readonly standardDeviation: number;
  readonly least: number;
  readonly greatest: number;
}

/** Drawn springs at one load point, N. */
export interface ScatteredForce extends Spread {
  readonly name: string;
  /** How many lie below and above the point's window; absent where it asks none. */
  readonly below?: number;
  readonly above?: number;
}

/** What springs drawn about a design do: how many meet every load window and every limit that a made spring can break. */
export interface ScatterFigures {
  /** Of the springs drawn, those that meet all. */
  readonly share: number;
  /** Of that share, from the number drawn: √(share (1 - share) / draws). */
  readonly standardError: number;
  readonly draws: number;
  /** The others, each counted where it falls first: at a load window, then at limits in their order. */
  readonly falls: Readonly<Partial<Record<LimitName | "load", number>>>;
  readonly rate: Spread;
  /** At each load point of given length or deflection. */
  readonly forces: readonly ScatteredForce[];
  /** What they were drawn within, plus-minus; m, but turns a pure number and the modulus a share. */
  readonly tolerances: ScatterTolerances;
}

/** What springs are drawn within; plus-minus each. */
export interface ScatterTolerances {
  readonly wireDiameter: number;
  readonly coilDiameter: number;
  readonly turns: number;
  readonly freeLength: number;
  readonly modulus: number;
}

/** One spring with every figure. */
export interface Design {
  readonly rank: number;
  readonly material: string;
  /** Label of the wire in its series. */
  readonly wire: string;
  readonly series: string;
  readonly wireDiameter: number;
  readonly ends: string;
  readonly totalTurns: number;
  readonly activeTurns: number;
  readonly meanDiameter: number;
  readonly outsideDiameter: number;
  readonly insideDiameter: number;
  readonly index: number;
  readonly rate: number;
  readonly freeLength: number;
  /** The free lengths at which this spring passes every limit and serves the load, m; null where it does at none. */
  readonly freeLengthRange: { readonly min: number; readonly max: number } | null;
  readonly solidLength: number;
  readonly pitch: number;
  readonly pitchAngle: number;
  readonly coilGap: number;
  readonly wireLength: number;
  readonly mass: number;
  readonly relativeCost: number;
  /** The parts of the cost proxy; they add up to it. */
  readonly costParts: OperationCosts & { readonly wire: number };
  readonly points: readonly DesignPoint[];
  readonly forceAtSolid: number;
  readonly stressFactor: number;
  readonly stressAtSolid: number;
  readonly solidSafety: number;
  readonly workingSafety: number;
  /** null: stable at any deflection */
  readonly bucklingDeflection: number | null;
  readonly surgeFrequency: number;
  readonly outsideDiameterAtSolid: number;
  /** null: static duty, or not judged */
  readonly fatigueSafety: number | null;
  /** null: static duty */
  readonly cyclic: CyclicDuty | null;
  /** null: no service temperature is given */
  readonly hot: HotFigures | null;
  readonly tolerance: ToleranceFigures;
  /** null: the tables do not reach a tolerance that the brief leaves to them; absent: not asked. */
  readonly scatter?: ScatterFigures | null;
  readonly shearModulus: number;
  readonly youngsModulus: number;
  readonly tensileStrength: number;
  /** `minimum`, `fit` or `stated`, with `, from memory` or `, inferred` added where the strength is. */
  readonly strengthBasis: string;
  readonly density: number;
  readonly margins: Readonly<Partial<Record<LimitName, number>>>;
  readonly cautions: readonly CautionName[];
}

/** The candidate that comes nearest to a limit that it breaks. */
export interface Miss {
  readonly limit: LimitName;
  readonly design: Design;
  /** What the limit would have to be for this design to pass, in the terms of the brief (SI). */
  readonly needed: number;
  /** What the limit is, in the same terms. */
  readonly limitValue: number;
  /** Whether the limit is an upper or a lower one. */
  readonly sense: "most" | "least";
  /** What `needed` and `limitValue` measure. */
  readonly dimension: Dimension;
  /** Every limit that the design breaks, this one among them. */
  readonly breaks: readonly LimitName[];
}

/**
 * An end of the tables at hand at which an answer stands: the last size of a material that could be tried, and what ends there.
 * `all`: none of its sizes is in the brief's series.
 */
export interface TableEnd {
  readonly material: string;
  readonly end: "thinnest" | "thickest" | "all";
  /** m */
  readonly size: number;
  /** The next size of the brief's series, which was not tried, m; absent for one given spring, which is of no series. */
  readonly next?: number;
  /** Rows of strength, a power law, sizes that the material's file states, rows of moduli, or what the series are sold in. */
  readonly because: "rows" | "fit" | "stated" | "moduli" | "soldIn";
}

/** What weakens a whole result: a limit not judged, springs that could not be drawn. */
export type WarningName = "noStressLimit" | "hotForceNotJudged" | "fatigueNotJudged" | "beyondFatigueLife" | "scatterUnknown";

/**
 * Why less is proven than "no spring of this space is better": beyond the first figure of the ranking only one diameter of a
 * family is compared; a limit without a declared shape is looked at by samples; the figure that ranks is searched for its least.
 */
export type ProofCaveat = "severalFigures" | "sampledLimit" | "searchedFigure";

/** What a walk over the reals, or with the diameter solved, shows of the whole space: each family is one candidate, its best. */
export interface Proof {
  readonly families: number;
  /** Families without a diameter that fits, by the limit that takes the last of them. */
  readonly empty: Readonly<Partial<Record<LimitName, number>>>;
  readonly merit: MeritName;
  /** The merit of the best design, and of the best of another family; null where there is none. */
  readonly optimum: number | null;
  readonly runnerUp: number | null;
  /** What lies between them, as a share of the optimum. */
  readonly gap: number | null;
  /** The least share by which all limits would have to give for an empty family to hold a design; null where none is near. */
  readonly nearestEmpty: number | null;
  /** How far the claim falls short of the whole; empty: it does not. */
  readonly caveats: readonly ProofCaveat[];
}

/** What a sweep finds, SI. */
export interface SweepResult {
  readonly brief: Brief;
  readonly practice: PracticeName;
  readonly walked: number;
  readonly rejected: Readonly<Partial<Record<LimitName, number>>>;
  readonly feasible: number;
  readonly designs: readonly Design[];
  readonly front: readonly Design[];
  /** The two merit figures of the front, the first across. */
  readonly frontAxes: readonly [MeritName, MeritName];
  /** When asked, or when nothing is feasible. */
  readonly nearest?: readonly Miss[];
  /**
   * An even sample of the survivors for charts, in family order, with the first of each material and wire as far as there is room;
   * the whole where it is small enough.
   */
  readonly sample?: readonly Choice[];
  /** When asked: what each material and wire added to the tally, in the order of the walk. */
  readonly wires?: readonly WireFunnel[];
  /** How many of the best by `rank` were ranked again by their yield; absent: none. */
  readonly ranksAgain?: number;
  /** Where every family is one candidate, and the first of them comes first. */
  readonly proof?: Proof;
  /** The ends of the tables at which the best stands; where nothing fits, every end beyond which the series go on. */
  readonly tableEnds: readonly TableEnd[];
  readonly warnings: readonly WarningName[];
}

/** A limit in the terms of the brief, and what a design would need it to be (SI). */
export interface LimitTerms {
  readonly limit: LimitName;
  readonly limitValue: number;
  readonly needed: number;
  readonly sense: "most" | "least";
  readonly dimension: Dimension;
}

/** The best design once one limit is eased. */
export interface EasedBest {
  readonly design: Design;
  /** Its first figure of the ranking, and the change of that figure as a share of what it is without easing. */
  readonly merit: number;
  readonly change: number;
  /** What this design needs of the limit; null where it needs no more than the brief gives, or the limit has no number. */
  readonly terms: LimitTerms | null;
}

/** What the best design would gain if one limit alone were eased. */
export interface LimitPrice {
  readonly limit: LimitName;
  /** How far inside the limit the best design stands as asked; null where that has no number. */
  readonly margin: number | null;
  /** Bounds moved outwards by a share of themselves, or the limit gone (null); no best where it cannot be eased so. */
  readonly steps: readonly { readonly share: number | null; readonly best: EasedBest | null }[];
}

/** What one limit, or two by the same share, must give before anything fits. */
export interface Concession {
  readonly limits: readonly LimitName[];
  /** The least share of their bounds by which these must move outwards. */
  readonly share: number;
  /** The design that then fits. */
  readonly design: Design;
  readonly terms: readonly LimitTerms[];
}

/** What each limit costs, and what must give where nothing fits, SI. */
export interface RelaxResult extends Funnel {
  readonly brief: Brief;
  readonly practice: PracticeName;
  /** The figure that gains are measured in: the first of the ranking. */
  readonly merit: MeritName;
  /** The best design as asked; null where nothing fits. */
  readonly best: Design | null;
  /** In the order in which a candidate falls; none where nothing fits. */
  readonly prices: readonly LimitPrice[];
  /** Where nothing fits: single limits that suffice, then pairs that take less of both; each the least share first. */
  readonly concessions: readonly Concession[];
  /** The ends of the tables at which the best stands, as asked or with a limit eased; where nothing fits, as of a sweep. */
  readonly tableEnds: readonly TableEnd[];
  readonly warnings: readonly WarningName[];
}

/** How much of what fits a sweep keeps. */
export interface SweepOptions {
  /** How many designs to keep; default 20, or with `each` all. */
  readonly top?: number;
  /** Keep the best design for each value of this. */
  readonly each?: "wire" | "material" | "ends";
  readonly frontAxes?: readonly [MeritName, MeritName];
  /** Report the nearest miss of each limit even when something is feasible. */
  readonly nearest?: boolean;
  /** Keep at most this many survivors for charts; default none. */
  readonly sample?: number;
  /** Tell the tally of each material and wire too. */
  readonly byWire?: true;
}

/** How far a sweep is with what it does now: one thing after the other. */
export interface SweepProgress {
  /** It walks the space, looks for what comes nearest to a limit or to a fit, or draws springs about designs. */
  readonly work: "walk" | "nearest" | "draw";
  /** What is done of that. */
  readonly share: number;
  /** Candidates counted so far, or springs drawn. */
  readonly counted: number;
}

/** Who follows a sweep, and may end it. */
export interface SweepWatch {
  /** Told between two pieces of the work, of which a long sweep has thousands. */
  readonly onProgress?: (progress: SweepProgress) => void;
  /** Looked at there; where it is aborted the sweep throws its reason. On the same thread only `onProgress` can abort it. */
  readonly signal?: AbortSignal;
}

/** Who set a threshold. */
export interface ThresholdSource {
  readonly from: "brief" | "practice" | "material" | "geometry";
  /** Key of the brief at which it stands or would stand. */
  readonly key?: string;
  /** The author's own text where it is from the brief, else the book, standard or reason. */
  readonly text: string;
}

/** A figure that a limit judges beside the one it is named after. */
export type JudgedFigure = "outsideDiameterAtSolid" | "stressAtGreatestLoad" | "wireDiameter";

/** One bound of one limit, or of the load itself, held against a given spring. */
export interface CheckEntry {
  readonly limit: LimitName | "load";
  /** Name of the load point, where the force there is judged. */
  readonly point?: string;
  /** What is judged, where it is not the figure that the limit is named after. */
  readonly figure?: JudgedFigure;
  /** Value and bound in the terms of the brief, SI; a value of Infinity, which JSON writes as null: it never buckles. */
  readonly value: number;
  readonly bound: number;
  readonly sense: "most" | "least";
  readonly dimension: Dimension;
  readonly margin: number;
  readonly passes: boolean;
  readonly source: ThresholdSource;
}

/** Two of the data of a given spring that cannot both hold; for `freeLength` what follows is the solid length. */
export interface Disagreement {
  readonly figure: "outsideDiameter" | "insideDiameter" | "activeTurns" | "rate" | "freeLength";
  readonly given: number;
  /** What the other data give for it, SI. */
  readonly follows: number;
}

/** A measured or quoted rate beside the one that wire, diameter and turns give. */
export interface QuotedRate {
  /** N/m */
  readonly rate: number;
  /** Share by which it lies above the one that follows. */
  readonly difference: number;
  /** Active turns that would give it. */
  readonly activeTurns: number;
  /** Force that it gives at each point of the design, N. */
  readonly forces: readonly number[];
}

/** What a check took that the design does not state, or that its reader should know. */
export type CheckNoteName = "freeLengthByLoad" | "turnsFromRate" | "notSold" | "exactLoad";

/** One given spring judged against everything that a brief asks. */
export interface CheckResult {
  readonly brief: CheckBrief;
  readonly practice: PracticeName;
  readonly passes: boolean;
  /** The spring with its rate as wire, diameter and turns give it. */
  readonly design: Design;
  /** The load first, then limits in the order in which a candidate falls. */
  readonly entries: readonly CheckEntry[];
  /** null: no rate is given, or the turns follow from it. */
  readonly quotedRate: QuotedRate | null;
  readonly disagreements: readonly Disagreement[];
  /** The ends of its material's tables at which the spring stands. */
  readonly tableEnds: readonly TableEnd[];
  readonly notes: readonly CheckNoteName[];
  readonly warnings: readonly WarningName[];
}

/** What a walk counted: walked = feasible + the sum of rejected. */
export interface Funnel {
  readonly walked: number;
  readonly rejected: Readonly<Partial<Record<LimitName, number>>>;
  readonly feasible: number;
}

/** What one material in one wire added to the tally. */
export interface WireFunnel extends Funnel {
  readonly material: string;
  readonly series: string;
  /** Label of the wire in its series. */
  readonly wire: string;
  /** m */
  readonly wireDiameter: number;
}

/** Which of two nested springs: the outer or the inner. */
export type NestedRole = "outer" | "inner";

/** One spring of a nested pair; its points carry its own share of each force. */
export interface NestedDesign extends Design {
  readonly hand: "right" | "left";
}

/** Two springs, one inside the other, that share a load: equal free lengths, so by their rates at every length. */
export interface Pair {
  readonly rank: number;
  /** The outer's share of rate and force. */
  readonly share: number;
  /** Of both springs, kg. */
  readonly mass: number;
  readonly relativeCost: number;
  /** Of both springs together, N/m. */
  readonly rate: number;
  /** Room on the diameter, with the inner solid and grown, beyond the clearance asked, m. */
  readonly clearance: number;
  /** That room with both coil diameters at the wrong end of their tolerance, m; null where the practice's tables do not reach. */
  readonly toleranceRoom: number | null;
  readonly outer: NestedDesign;
  readonly inner: NestedDesign;
}

/** What a sweep of two springs, one inside the other, finds, SI. */
export interface NestedResult extends Funnel {
  readonly brief: Brief;
  readonly practice: PracticeName;
  readonly nested: 2;
  /** The outer's shares of the load that were tried. */
  readonly shares: { readonly least: number; readonly greatest: number; readonly step: number };
  /** Springs of each role, over all shares; the counts of the result are their sums. */
  readonly roles: Readonly<Record<NestedRole, Funnel>>;
  /** How many pairs of feasible springs fit in one another. */
  readonly pairsFit: number;
  /** The least by which two springs of one share miss the clearance asked, m; null where a pair fits, or no share has both. */
  readonly lacking: number | null;
  readonly pairs: readonly Pair[];
  /** The best spring that answers the whole brief alone; null where none does. */
  readonly alone: Design | null;
  readonly warnings: readonly WarningName[];
}
