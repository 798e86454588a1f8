import type { Plugin } from "esbuild";
export const NOT_OFFERED: Readonly<Record<string, string>>;
export const onlyWhatIsOffered: Plugin;
export const settledVersion: Plugin;
