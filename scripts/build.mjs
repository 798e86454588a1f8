// Bundles client, server and command line into dist/, with esbuild's account of each in dist/meta/.
//   --minify  smaller output, for the package
//   --watch   build again on each change
import { chmodSync, existsSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { pagePlugin } from "./pageModule.mjs";
import { ROOT } from "./run.mjs";

/** CommonJS packages inside an ES module still call require. */
const REQUIRE =
  'import { createRequire as kitquillRequire } from "node:module"; const require = kitquillRequire(import.meta.url);';

/** What reads workbooks, loaded by the other bundles when the first workbook comes. */
const SHEETS = { module: /\/syntax\/sheets\/load\.ts$/, file: "sheets.js" };

/** Every bundle: what it is made from and where it must run. */
export const BUNDLES = [
  {
    name: "client",
    entry: "client/src/extension.ts",
    outfile: "dist/client.cjs",
    options: { platform: "node", target: "node20", format: "cjs", external: ["vscode"] },
  },
  {
    // Named .js because the editor's worker host adds that ending to any other.
    name: "client-web",
    entry: "client/src/extension-web.ts",
    outfile: "dist/client-web.js",
    options: { platform: "browser", target: "es2022", format: "cjs", external: ["vscode"] },
  },
  {
    name: "server",
    entry: "server/src/main-node.ts",
    outfile: "dist/server.cjs",
    options: { platform: "node", target: "node20", format: "cjs" },
  },
  {
    name: "server-worker",
    entry: "server/src/main-worker.ts",
    outfile: "dist/server-worker.js",
    options: {
      platform: "browser",
      target: "es2022",
      format: "iife",
      // Packages with a variant for pages and one for workers, which have no document.
      conditions: ["worker"],
    },
  },
  {
    // An ES module for Node and workers alike.
    name: "sheets",
    entry: "server/src/syntax/sheets/load.ts",
    outfile: `dist/${SHEETS.file}`,
    options: { platform: "browser", target: "es2022", format: "esm" },
  },
  {
    name: "kitquill",
    entry: "server/src/cli/main.ts",
    outfile: "dist/kitquill.mjs",
    executable: true,
    options: {
      platform: "node",
      target: "node20",
      format: "esm",
      banner: { js: `#!/usr/bin/env node\n${REQUIRE}` },
    },
  },
];

/**
 * Builds all bundles whose entry exists.
 * @param {{ minify?: boolean, watch?: boolean }} [how]
 */
export async function build({ minify = false, watch = false } = {}) {
  const { default: esbuild } = await import("esbuild");
  for (const bundle of BUNDLES) {
    if (!existsSync(join(ROOT, bundle.entry))) {
      console.log(`${bundle.outfile} is not built: there is no ${bundle.entry}.`);
      continue;
    }
    const options = {
      ...bundle.options,
      entryPoints: [bundle.entry],
      outfile: bundle.outfile,
      absWorkingDir: ROOT,
      bundle: true,
      minify,
      sourcemap: minify ? false : "linked",
      metafile: true,
      logLevel: "warning",
      // Licences of what is bundled go into the package as one file (licences.mjs).
      legalComments: "none",
      plugins: [loadLater, pagePlugin, report(bundle)],
    };
    if (watch) await (await esbuild.context(options)).watch();
    else await esbuild.build(options);
  }
}

/** Leaves what is imported on demand in its own bundle, which lies beside the others. */
const loadLater = {
  name: "load later",
  setup(builder) {
    builder.onResolve({ filter: SHEETS.module }, ({ kind }) =>
      kind === "dynamic-import" ? { path: `./${SHEETS.file}`, external: true } : undefined,
    );
  },
};

/** Says what was built, keeps the metafile, and makes the command line executable. */
function report({ name, outfile, executable }) {
  return {
    name: "report",
    setup(builder) {
      builder.onEnd(({ metafile, errors }) => {
        if (errors.length > 0 || !metafile) return;
        mkdirSync(join(ROOT, "dist/meta"), { recursive: true });
        writeFileSync(join(ROOT, `dist/meta/${name}.json`), JSON.stringify(metafile));
        if (executable) chmodSync(join(ROOT, outfile), 0o755);
        const kilobytes = Math.round(metafile.outputs[outfile].bytes / 1000);
        console.log(`${outfile} ${kilobytes} kB`);
      });
    },
  };
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) {
  const has = (flag) => process.argv.includes(flag);
  try {
    await build({ minify: has("--minify"), watch: has("--watch") });
  } catch (error) {
    // esbuild has already shown what is wrong in the sources.
    if (!error.errors) console.error(error);
    process.exitCode = 1;
  }
}
