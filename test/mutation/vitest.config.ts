import { defineConfig } from "vitest/config";
import { BaseSequencer, type TestSpecification } from "vitest/node";

/** Rooms, then springs of the shipped catalogs, then whole sweeps. */
class CheapFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return [...files].sort((a, b) => a.moduleId.localeCompare(b.moduleId));
  }
}

/**
 * The tests that a mutation is run against: all run in process. Searches are short, for thousands of mutations make up for it.
 */
export default defineConfig({
  test: {
    root: new URL("../..", import.meta.url).pathname,
    testTimeout: 120_000,
    env: { RUNS: "12" },
    sequence: { sequencer: CheapFirst },
    include: ["test/mutation/{rooms,shipped,sweeps}.ts"],
  },
});
