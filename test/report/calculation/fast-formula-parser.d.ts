declare module "fast-formula-parser" {
  interface Place {
    readonly sheet: string;
    readonly row: number;
    readonly col: number;
  }
  interface Range {
    readonly sheet: string;
    readonly from: { readonly row: number; readonly col: number };
    readonly to: { readonly row: number; readonly col: number };
  }
  /** A parser and evaluator of spreadsheet formulas; rows and columns from 1. */
  export default class FormulaParser {
    constructor(settings: {
      readonly functions?: Readonly<Record<string, (...values: readonly { readonly value: unknown }[]) => unknown>>;
      readonly onCell: (place: Place) => unknown;
      readonly onRange: (range: Range) => unknown;
      readonly onVariable: (name: string) => Place | undefined;
    });
    parse(formula: string, position: Place): unknown;
  }
}
