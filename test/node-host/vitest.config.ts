/** The tests of the packaged extension in an editor whose extensions run in Node. */
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: import.meta.dirname,
    include: ["*.test.ts"],
    fileParallelism: false,
    testTimeout: 300_000,
    hookTimeout: 120_000,
    reporters: ["default"],
  },
});
