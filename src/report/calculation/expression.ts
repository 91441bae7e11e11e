/** The functions that an expression may call. */
const FUNCTIONS: Readonly<Record<string, (...values: number[]) => number>> = {
  sqrt: Math.sqrt,
  atan: Math.atan,
  log: Math.log,
  abs: Math.abs,
  min: Math.min,
  max: Math.max,
};

/** One part of an expression. */
export interface Token {
  readonly kind: "number" | "symbol" | "function" | "pi" | "mark";
  readonly text: string;
}

/**
 * An expression in its parts, spaces left out.
 *
 * @param expression  in the grammar of `Derived`
 * @throws Error where it holds something else
 */
export function tokensOf(expression: string): Token[] {
  const parts = expression.match(/\d+(?:\.\d+)?|[\p{L}][\p{L}\d]*|\S/gu) ?? [];
  return parts.map((text): Token => {
    if (/^\d/.test(text)) return { kind: "number", text };
    if (text === "pi") return { kind: "pi", text };
    if (/^\p{L}/u.test(text)) return { kind: text in FUNCTIONS ? "function" : "symbol", text };
    if ("+-*/^(),".includes(text)) return { kind: "mark", text };
    throw new Error(`an expression cannot hold ${text}: ${expression}`);
  });
}

/**
 * The value of an expression.
 *
 * @param expression  in the grammar of `Derived`
 * @param known       value of each symbol, in the sheet's units
 * @returns in the unit that follows
 * @throws Error where it does not follow the grammar
 */
export function evaluate(expression: string, known: (symbol: string) => number): number {
  const tokens = tokensOf(expression);
  let at = 0;
  const next = () => tokens[at]?.text;
  const take = (mark: string) => {
    if (next() !== mark) throw new Error(`${mark} is missing in ${expression}`);
    at++;
  };

  const sum = (): number => {
    let value = product();
    while (next() === "+" || next() === "-") value = tokens[at++]?.text === "+" ? value + product() : value - product();
    return value;
  };
  const product = (): number => {
    let value = power();
    while (next() === "*" || next() === "/") value = tokens[at++]?.text === "*" ? value * power() : value / power();
    return value;
  };
  const power = (): number => {
    const base = atom();
    if (next() !== "^") return base;
    at++;
    return base ** exponent();
  };
  const exponent = (): number => {
    if (next() !== "-") return atom();
    at++;
    return -atom();
  };
  const atom = (): number => {
    const token = tokens[at++];
    switch (token?.kind) {
      case "number":
        return Number(token.text);
      case "pi":
        return Math.PI;
      case "symbol":
        return known(token.text);
      case "function": {
        take("(");
        const values = [sum()];
        while (next() === ",") {
          at++;
          values.push(sum());
        }
        take(")");
        return FUNCTIONS[token.text]?.(...values) as number;
      }
      default: {
        at--;
        take("(");
        const value = sum();
        take(")");
        return value;
      }
    }
  };

  const value = sum();
  if (at < tokens.length) throw new Error(`${next()} is left over in ${expression}`);
  return value;
}

/**
 * An expression with every symbol replaced, spaced as it was.
 *
 * @param expression  in the grammar of `Derived`
 * @param replace     what stands for a symbol; `raised` where a power follows it
 */
export function withSymbols(expression: string, replace: (symbol: string, raised: boolean) => string): string {
  return expression.replace(/\p{L}[\p{L}\d]*/gu, (word: string, offset: number) => {
    const [token] = tokensOf(word);
    return token?.kind === "symbol" ? replace(word, expression.charAt(offset + word.length) === "^") : word;
  });
}
