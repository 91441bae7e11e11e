// Tests on briefs as they are written and on the shipped catalogs: dearer to load, quick to run.
import "../constrain/design.test.ts";
import "../check/check.test.ts";
import "../check/disagreement.test.ts";
import "../brief/load.test.ts";
import "../published/strength-tables.test.ts";
import "../published/tolerance-tables.test.ts";
import "../published/wire-tolerances.test.ts";
import "../published/end-table.test.ts";
import "../property/shapes.test.ts";
import "../nested/all-pairs.test.ts";
import "../scatter/propagation.test.ts";
