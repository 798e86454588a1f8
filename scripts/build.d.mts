import type { BuildOptions } from "esbuild";

/** Every build: what is made from what, and where it must run. */
export interface Build {
  readonly name: string;
}

export const BUILDS: readonly Build[];
/** What esbuild is asked for one of the builds. */
export function optionsOf(one: Build, how?: { minify?: boolean; into?: string }): BuildOptions;
