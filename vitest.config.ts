/** The tests that need no editor; those in test/editor have a configuration of their own. */
import { defineConfig } from "vitest/config";
import { virtualVitePlugin } from "./scripts/virtualModules.mjs";

export default defineConfig({
  plugins: [virtualVitePlugin],
  test: {
    include: ["test/**/*.test.ts"],
    exclude: ["test/editor/**", "test/node-host/**", "**/node_modules/**"],
    // Properties try thousands of cases; a busy machine is no failure, an endless loop is.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: "100%",
    // No module keeps anything between two guides, so files may share what is loaded: half the time.
    isolate: false,
  },
});
