import { writeFileSync } from "node:fs";
import path from "node:path";
import { limitsPaper } from "./limits-paper.ts";
import { strengthPicture } from "./strength-picture.ts";
import { root } from "./tree.ts";

/** Papers that are made from the code: `npm run docs`. */
writeFileSync(path.join(root, "reports", "limits.md"), limitsPaper());
writeFileSync(path.join(root, "reports", "pictures", "strength.svg"), await strengthPicture());
