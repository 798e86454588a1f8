import type { Plugin as EsbuildPlugin } from "esbuild";
import type { Plugin as VitePlugin } from "vite";

export const pagePlugin: EsbuildPlugin;
export const pageVitePlugin: VitePlugin;
