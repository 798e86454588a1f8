// Bundles client, server and command line into dist/, with esbuild's account of each in dist/meta/.
//   --minify  smaller output, for the package, held to the largest sizes
//   --watch   build again on each change
import { chmodSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { onlyWhatIsOffered, settledVersion } from "./clientLibrary.mjs";
import { modulesPlugin } from "./modules.mjs";
import { ROOT } from "./run.mjs";
import { sizeFaults, sizeLines } from "./sizes.mjs";
import { virtualModules } from "./virtualModules.mjs";

const CLI = "dist/kitquill.mjs";

/** Every build: what is made from what, and where it must run. */
export const BUILDS = [
  {
    name: "client",
    entries: { client: "client/src/extension.ts" },
    options: {
      platform: "node",
      target: "node20",
      format: "cjs",
      external: ["vscode"],
      outExtension: { ".js": ".cjs" },
      plugins: [settledVersion, onlyWhatIsOffered],
    },
  },
  {
    // Named .js because the editor's worker host adds that ending to any other.
    name: "client-web",
    entries: { "client-web": "client/src/extension-web.ts" },
    options: {
      platform: "browser",
      target: "es2022",
      format: "cjs",
      external: ["vscode"],
      plugins: [onlyWhatIsOffered],
    },
  },
  {
    // The page inside the preview's panel.
    name: "preview-page",
    entries: { "preview-page": "client/page/src/main.ts" },
    options: { platform: "browser", target: "es2022", format: "iife" },
  },
  {
    name: "preview-style",
    entries: { "preview-page": "client/page/preview.css" },
    options: { target: "chrome114" },
  },
  {
    name: "server-worker",
    entries: { "server-worker": "server/src/start-worker.ts" },
    options: { platform: "browser", target: "es2022", format: "iife" },
  },
  {
    // Modules for Node and workers alike: what two of them use, and what is imported on demand,
    // becomes a file of its own in parts/.
    name: "server",
    entries: {
      server: "server/src/main-node.ts",
      worker: "server/src/main-worker.ts",
      kitquill: "server/src/cli/main.ts",
    },
    options: {
      platform: "neutral",
      mainFields: ["module", "main"],
      target: ["node20", "es2022"],
      format: "esm",
      splitting: true,
      outExtension: { ".js": ".mjs" },
      chunkNames: "parts/[name]-[hash]",
      plugins: [modulesPlugin, virtualModules],
    },
  },
];

/** What esbuild is asked for one of the builds. */
export function optionsOf({ name, entries, options }, { minify = false, into = "dist" } = {}) {
  return {
    ...options,
    entryPoints: entries,
    outdir: into,
    absWorkingDir: ROOT,
    bundle: true,
    minify,
    charset: "utf8",
    sourcemap: minify ? false : "linked",
    metafile: true,
    logLevel: "warning",
    // Licences of what is bundled go into the package as one file (licences.mjs).
    legalComments: "none",
    plugins: [...(options.plugins ?? []), ...(into === "dist" ? [report(name)] : [])],
  };
}

/**
 * Makes all bundles.
 * @param {{ minify?: boolean, watch?: boolean }} [how]
 * @throws when one is larger than it may be; only what is minified is judged
 */
export async function build({ minify = false, watch = false } = {}) {
  const { default: esbuild } = await import("esbuild");
  // Names of parts change with their content, and old ones would stay.
  rmSync(join(ROOT, "dist/parts"), { recursive: true, force: true });
  const outputs = {};
  for (const one of BUILDS) {
    const options = optionsOf(one, { minify });
    if (watch) await (await esbuild.context(options)).watch();
    else Object.assign(outputs, (await esbuild.build(options)).metafile.outputs);
  }
  if (watch) return;
  if (!minify) return;
  for (const line of sizeLines(outputs)) console.log(line);
  const faults = sizeFaults(outputs);
  if (faults.length > 0) throw new Error(`The bundles are too large: ${faults.join("; ")}.`);
}

/** Keeps the metafile, and makes the command line executable. */
function report(name) {
  return {
    name: "report",
    setup(builder) {
      builder.onEnd(({ metafile, errors }) => {
        if (errors.length > 0 || !metafile) return;
        mkdirSync(join(ROOT, "dist/meta"), { recursive: true });
        writeFileSync(join(ROOT, `dist/meta/${name}.json`), JSON.stringify(metafile));
        if (CLI in metafile.outputs) chmodSync(join(ROOT, CLI), 0o755);
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
    if (!error.errors) console.error(error.message);
    process.exitCode = 1;
  }
}
