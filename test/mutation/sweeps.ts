// Tests that sweep whole briefs, each against something that knows nothing of the walk: what no test of a room has seen comes here.
import "../property/working.test.ts";
import "../property/naive.test.ts";
import "../property/nearest.test.ts";
import "../property/shared.test.ts";
import "../property/wires.test.ts";
