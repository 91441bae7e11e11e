import { expressionInterpreter } from "vega-interpreter";

/** A node of an expression of a chart, as Vega parses it. */
export interface ExpressionNode {
  readonly type: string;
  readonly name?: string;
  readonly value?: unknown;
  readonly regex?: unknown;
  readonly operator?: string;
  readonly computed?: boolean;
  readonly object?: ExpressionNode;
  readonly property?: ExpressionNode;
  readonly callee?: ExpressionNode;
  readonly arguments?: readonly ExpressionNode[];
  readonly argument?: ExpressionNode;
  readonly left?: ExpressionNode;
  readonly right?: ExpressionNode;
  readonly test?: ExpressionNode;
  readonly consequent?: ExpressionNode;
  readonly alternate?: ExpressionNode;
}

type Row = Readonly<Record<string, unknown>>;
type Functions = Readonly<Record<string, unknown>>;

/** What evaluates a node for one mark: its datum, the signals by `$name`, the mark itself. */
type Step = (datum: Row, signals: Row, item: Row) => unknown;

/** As many as the caller gave nodes. */
type Steps = readonly [Step, Step, Step, ...Step[]];

/** What Vega hands over with an expression. */
interface Context {
  readonly functions: Functions;
}

/** The channels of a mark, each with its expression. */
interface Encoding {
  readonly marktype: string;
  readonly channels: Readonly<Record<string, { readonly ast: ExpressionNode }>>;
}

/**
 * Evaluates the expressions of a chart without eval, for the page's policy. What is evaluated for each mark is put together once,
 * as functions of functions; the interpreter, which walks an expression anew each time, takes what seldom runs and what is not
 * known here. Of thousands of points it takes several times as long.
 */
export const chartExpressions = {
  ...expressionInterpreter,
  parameter(context: Context, expression: { readonly ast: ExpressionNode }) {
    const step = stepOf(expression.ast, context.functions);
    return step === null
      ? expressionInterpreter.parameter(context, expression)
      : (datum: Row, signals: Row) => step(datum, signals, {});
  },
  encode(context: Context, encoding: Encoding) {
    const { channels } = encoding;
    const steps = Object.entries(channels).map(([name, { ast }]) => ({ name, step: stepOf(ast, context.functions) as Step }));
    // A mark that reaches from one place to another is laid out by the interpreter.
    const isSpan = ["x2", "xc", "y2", "yc"].some((name) => name in channels);
    if (isSpan || steps.some(({ step }) => step === null)) return expressionInterpreter.encode(context, encoding);
    return (item: Record<string, unknown>, signals: Row) => {
      const datum = item.datum as Row;
      let isChanged = 0;
      for (const { name, step } of steps) {
        const value = step(datum, signals, item);
        if (item[name] === value) continue;
        item[name] = value;
        isChanged = 1;
      }
      return isChanged;
    };
  },
};

type Operation = (a: number, b: number) => unknown;

/** Those that charts use for each mark. */
const OPERATIONS: Readonly<Record<string, Operation>> = {
  "+": (a, b) => a + b,
  "-": (a, b) => a - b,
  "*": (a, b) => a * b,
  "/": (a, b) => a / b,
  "<": (a, b) => a < b,
  "<=": (a, b) => a <= b,
  ">": (a, b) => a > b,
  ">=": (a, b) => a >= b,
  "===": (a, b) => a === b,
  "!==": (a, b) => a !== b,
};

/** Functions that Vega leaves to whoever evaluates. */
const PLAIN: Functions = { length: (list: { readonly length: number }) => list.length, isFinite: Number.isFinite };

/** Names that are numbers of mathematics, not signals. */
const CONSTANTS = /^(NaN|E|PI|LN2|LN10|LOG2E|LOG10E|SQRT1_2|SQRT2|MIN_VALUE|MAX_VALUE)$/;

/** How a node is evaluated; null where something in it is not known here. */
function stepOf(node: ExpressionNode, functions: Functions): Step | null {
  switch (node.type) {
    case "Literal":
      return node.regex === undefined ? () => node.value : null;
    case "Identifier":
      return named(node.name as string);
    case "MemberExpression":
      return member(node, functions);
    case "CallExpression":
      return call(node, functions);
    case "ConditionalExpression":
      return joined([node.test, node.consequent, node.alternate], functions, ([test, then, other]) => (datum, signals, item) => {
        return test(datum, signals, item) ? then(datum, signals, item) : other(datum, signals, item);
      });
    case "LogicalExpression":
      return joined([node.left, node.right], functions, ([left, right]) =>
        node.operator === "&&"
          ? (datum, signals, item) => left(datum, signals, item) && right(datum, signals, item)
          : (datum, signals, item) => left(datum, signals, item) || right(datum, signals, item),
      );
    case "BinaryExpression": {
      const act = OPERATIONS[node.operator as string];
      if (act === undefined) return null;
      return joined([node.left, node.right], functions, ([left, right]) => (datum, signals, item) => {
        return act(left(datum, signals, item) as number, right(datum, signals, item) as number);
      });
    }
    case "UnaryExpression":
      if (node.operator !== "!") return null;
      return joined(
        [node.argument],
        functions,
        ([of]) =>
          (datum, signals, item) =>
            !of(datum, signals, item),
      );
    default:
      return null;
  }
}

function named(name: string): Step | null {
  if (name === "datum") return (datum) => datum;
  if (name === "item") return (_datum, _signals, item) => item;
  if (name === "event" || CONSTANTS.test(name)) return null;
  const signal = `$${name}`;
  return (_datum, signals) => signals[signal];
}

function member({ computed, object, property }: ExpressionNode, functions: Functions): Step | null {
  const of = stepOf(object as ExpressionNode, functions);
  if (of === null) return null;
  const at = computed ? stepOf(property as ExpressionNode, functions) : () => property?.name;
  if (at === null) return null;
  return (datum, signals, item) => {
    const value = (of(datum, signals, item) as Row)[at(datum, signals, item) as string];
    // A chart's data hold no functions: one that is reached is something else.
    return typeof value === "function" ? undefined : value;
  };
}

function call({ callee, arguments: given = [] }: ExpressionNode, functions: Functions): Step | null {
  // Vega marks functions of its own encoders.
  const name = callee?.name?.replace(/^_/, "") as string;
  const act = functions[name] ?? PLAIN[name];
  if (typeof act !== "function") return null;
  return joined(given, functions, (steps) => {
    const [first, second] = steps;
    // Most calls are of a scale or a test: no list is made for those.
    if (steps.length === 1) return (datum, signals, item) => act.call(functions, first(datum, signals, item));
    if (steps.length === 2) {
      return (datum, signals, item) => act.call(functions, first(datum, signals, item), second(datum, signals, item));
    }
    return (datum, signals, item) =>
      act.apply(
        functions,
        steps.map((step) => step(datum, signals, item)),
      );
  });
}

/** Several nodes put together; null where one of them is not known here. */
function joined(nodes: readonly (ExpressionNode | undefined)[], functions: Functions, join: (steps: Steps) => Step): Step | null {
  const steps = nodes.map((node) => stepOf(node as ExpressionNode, functions));
  return steps.includes(null) ? null : join(steps as unknown as Steps);
}
