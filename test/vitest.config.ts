import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    projects: [
      {
        extends: true,
        test: {
          name: "house",
          include: ["test/**/*.test.ts"],
          exclude: ["test/browser/**", "test/cli/**", "test/package/**"],
          testTimeout: 30_000,
        },
      },
      {
        extends: true,
        test: { name: "package", include: ["test/package/**/*.test.ts"], testTimeout: 60_000, hookTimeout: 120_000 },
      },
      { extends: true, test: { name: "cli", include: ["test/cli/**/*.test.ts"], testTimeout: 30_000 } },
      {
        extends: true,
        test: {
          name: "browser",
          include: ["test/browser/**/*.test.ts"],
          fileParallelism: false,
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
