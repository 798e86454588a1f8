// How modules are found for bundles that run in Node and in workers alike.
import { builtinModules } from "node:module";
import { join } from "node:path";
import { ROOT } from "./run.mjs";

/** Packages that have one entry for Node and one for browsers, under a condition for each. */
const HOSTS = /^(vscode-jsonrpc|vscode-languageserver(?:-protocol)?)\/(node|browser)$/;

/** For esbuild. */
export const modulesPlugin = {
  name: "modules",
  setup(builder) {
    builder.onResolve({ filter: HOSTS }, ({ path }) => {
      const [, name, host] = HOSTS.exec(path);
      return { path: join(ROOT, "node_modules", name, "lib", host, "main.js") };
    });
    builder.onResolve({ filter: /^(?:node:)?[a-z_]+(?:\/[a-z]+)?$/ }, ({ path, kind }) => {
      const name = path.replace("node:", "");
      if (!builtinModules.includes(name)) return undefined;
      // There is no require in an ES module: what a package requires is imported for it.
      if (kind === "require-call") return { path: name, namespace: "builtin" };
      return { path: `node:${name}`, external: true };
    });
    builder.onLoad({ filter: /.*/, namespace: "builtin" }, ({ path }) => ({
      contents: `export * from "node:${path}"; export { default } from "node:${path}";`,
    }));
  },
};
