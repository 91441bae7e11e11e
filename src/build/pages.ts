import { writeFileSync } from "node:fs";
import { build, type Plugin } from "esbuild";

/** Run by the build, from the root of the checkout: bundles the scripts of the pages. */

/** Transforms of Vega that no chart of a page uses: what is on maps, in trees and clouds of words, and the like. */
const UNUSED = /^vega-(crossfilter|force|geo|hierarchy|label|regression|voronoi|wordcloud)$/;

/** Vega's index takes every transform in; an unused one is an empty module instead, a twelfth of the script together. */
const withoutUnused: Plugin = {
  name: "without unused transforms",
  setup: (bundle) => {
    bundle.onResolve({ filter: UNUSED }, ({ path }) => ({ path, namespace: "unused" }));
    bundle.onLoad({ filter: UNUSED, namespace: "unused" }, () => ({ contents: "" }));
  },
};

const { metafile } = await build({
  entryPoints: { "springs-page": "src/explorer/springs-page.ts", "pairs-page": "src/explorer/pairs-page.ts" },
  outdir: "dist",
  bundle: true,
  minify: true,
  platform: "browser",
  format: "iife",
  target: "es2022",
  legalComments: "none",
  logLevel: "warning",
  plugins: [withoutUnused],
  metafile: true,
});
writeFileSync("dist/build/page.json", JSON.stringify(metafile));
