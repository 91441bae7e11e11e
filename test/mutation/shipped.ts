// Tests on briefs as they are written and on the shipped catalogs: dearer to load, quick to run.
import "../constrain/design.test.ts";
import "../studies/check/check.test.ts";
import "../studies/check/disagreement.test.ts";
import "../brief/load.test.ts";
import "../published/strength-tables.test.ts";
import "../published/tolerance-tables.test.ts";
import "../published/wire-tolerances.test.ts";
import "../published/end-table.test.ts";
import "../property/shapes.test.ts";
import "../studies/nested/all-pairs.test.ts";
import "../studies/yield/propagation.test.ts";
