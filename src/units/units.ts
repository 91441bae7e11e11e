import {
  create,
  createBigNumberClass,
  createComplexClass,
  createCreateUnit,
  createFractionClass,
  createUnitClass,
  createUnitFunction,
} from "mathjs";
import {
  absDependencies,
  addScalarDependencies,
  divideScalarDependencies,
  equalDependencies,
  fixDependencies,
  formatDependencies,
  isNumericDependencies,
  multiplyScalarDependencies,
  numberDependencies,
  powDependencies,
  roundDependencies,
  subtractScalarDependencies,
} from "mathjs/number";

// What the declarations of mathjs leave out.
declare module "mathjs" {
  type Factory = FactoryFunctionMap[string];
  const createBigNumberClass: Factory;
  const createComplexClass: Factory;
  const createCreateUnit: Factory;
  const createFractionClass: Factory;
  const createUnitClass: Factory;
  const createUnitFunction: Factory;
  const subtractScalarDependencies: FactoryFunctionMap;
}

/**
 * The units of mathjs on its arithmetic of plain numbers: a third of the time that matrices and big numbers take to build, and no parser
 * of expressions that a text could reach.
 */
export const math = create(
  {
    ...absDependencies,
    ...addScalarDependencies,
    ...divideScalarDependencies,
    ...equalDependencies,
    ...fixDependencies,
    ...formatDependencies,
    ...isNumericDependencies,
    ...multiplyScalarDependencies,
    ...numberDependencies,
    ...powDependencies,
    ...roundDependencies,
    ...subtractScalarDependencies,
    createBigNumberClass,
    createComplexClass,
    createCreateUnit,
    createFractionClass,
    createUnitClass,
    createUnitFunction,
  },
  { number: "number" },
);

// mathjs rounds psi; here every inch-pound unit follows from 1 lbf = 4.4482216152605 N and 1 in = 25.4 mm, which are exact.
const psi = 4.4482216152605 / 0.0254 ** 2;
for (const [name, size] of Object.entries({ psi: 1, kpsi: 1e3, ksi: 1e3, Mpsi: 1e6 })) {
  math.createUnit(name, { definition: math.unit(psi * size, "Pa"), prefixes: "none" }, { override: true });
}

// A degree of Fahrenheit is 5/9 K, for which mathjs has a fraction that its arithmetic of plain numbers does not take.
for (const [name, offset] of Object.entries({ degF: 459.67, fahrenheit: 459.67, degR: 0, rankine: 0 })) {
  math.createUnit(name, { definition: math.unit(5 / 9, "K"), prefixes: "none", offset }, { override: true });
}
