// Tests of single rooms, cheap: most mutations fall here. One file, so that each mutation loads the code once.
import "../mechanics/force-and-stress.test.ts";
import "../mechanics/geometry.test.ts";
import "../mechanics/tables.test.ts";
import "../enumerate/border.test.ts";
import "../enumerate/families.test.ts";
import "../enumerate/range.test.ts";
import "../enumerate/walk.test.ts";
import "../score/score.test.ts";
import "../score/kept.test.ts";
import "../practice/practice.test.ts";
import "../published/allowable-stress.test.ts";
import "../published/buckling.test.ts";
import "../published/stress-factors.test.ts";
import "../published/surge.test.ts";
