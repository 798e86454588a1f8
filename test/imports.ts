/** Who imports whom in a folder of sources, types included, from esbuild's metafile. */
import { readdirSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { build, type Plugin } from "esbuild";

export interface Import {
  /** Path of the importing file from the root folder. */
  readonly from: string;
  /** Path of the imported file, or the name of a package or of a module of Node. */
  readonly to: string;
}

/** All imports of the TypeScript files in and below a folder. */
export async function importsIn(folder: string): Promise<Import[]> {
  const { metafile } = await build({
    entryPoints: sourcesIn(folder),
    bundle: true,
    // Otherwise each file would be put out with all that it imports.
    splitting: true,
    write: false,
    metafile: true,
    format: "esm",
    platform: "node",
    packages: "external",
    external: ["virtual:*"],
    outdir: "unused",
    logLevel: "error",
    plugins: [keepTypeImports],
  });
  const files = Object.entries(metafile.inputs);
  return files.flatMap(([from, { imports }]) => imports.map(({ path }) => ({ from, to: path })));
}

/** Paths of the TypeScript files in and below a folder. */
export function sourcesIn(folder: string): string[] {
  const names = readdirSync(folder, { recursive: true, encoding: "utf8" });
  return names.filter((name) => name.endsWith(".ts")).map((name) => join(folder, name));
}

/** esbuild drops imports of types before it writes its account; as plain imports they stay. */
const keepTypeImports: Plugin = {
  name: "keep type imports",
  setup(builder) {
    builder.onLoad({ filter: /\.ts$/ }, async ({ path }) => {
      const source = await readFile(path, "utf8");
      const imports = source.replace(/^import type (?=[{*\w])/gm, "import ");
      return { contents: imports.replace(/^export type (?=[{*])/gm, "export "), loader: "ts" };
    });
  },
};
