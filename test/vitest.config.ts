import { defineConfig } from "vitest/config";
import { BaseSequencer, type TestSpecification } from "vitest/node";
import QuietReporter from "./quiet-reporter.ts";

/** Rooms whose tests run one after another in the same processes, in the order in which they begin. */
const PROJECTS = [
  { name: "browser", include: ["test/browser/**/*.test.ts"] },
  { name: "package", include: ["test/package/**/*.test.ts"] },
  { name: "cli", include: ["test/cli/**/*.test.ts"] },
  {
    name: "house",
    include: ["test/**/*.test.ts"],
    exclude: ["test/browser/**", "test/cli/**", "test/package/**"],
  },
];

/** One project after another, so that a process goes on to the next file of its own; in each the files that took longest come first. */
class ByProject extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const places = new Map(PROJECTS.map(({ name }, place) => [name, place]));
    const place = ({ project }: TestSpecification) => places.get(project.name) ?? 0;
    return [...(await super.sort(files))].sort((a, b) => place(a) - place(b));
  }
}

/** How long a page may take until it shows what is polled for, ms. */
const PATIENCE = 60_000;

/** Ends what hangs, ms; no test waits for a span of time. A long search may take long. */
const HUNG = process.env.RUNS === undefined ? 300_000 : 3_600_000;

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    isolate: false,
    maxWorkers: "100%",
    sequence: { sequencer: ByProject },
    reporters: [new QuietReporter()],
    silent: "passed-only",
    expect: { poll: { timeout: PATIENCE } },
    projects: PROJECTS.map((project) => ({ extends: true, test: { ...project, testTimeout: HUNG, hookTimeout: HUNG } })),
  },
});
