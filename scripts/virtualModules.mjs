// Modules whose text is made when the server is built, for esbuild and for vite: the script and style
// of the published page, and the pages of the checks.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { pageModule } from "./pageModule.mjs";
import { ROOT } from "./run.mjs";

const PAGES = "server/docs/checks";

/** How each is made, and the folders it is made from. */
const MADE = new Map([
  ["virtual:page", { make: pageModule, from: ["server/page", "server/page/src"] }],
  ["virtual:check-pages", { make: checkPages, from: [PAGES] }],
]);

/** The pages of the checks as texts by code. */
function checkPages() {
  const names = readdirSync(join(ROOT, PAGES)).filter((name) => name !== "README.md");
  const texts = names.map((name) => [
    name.replace(/\.md$/, ""),
    readFileSync(join(ROOT, PAGES, name), "utf8"),
  ]);
  return `export const PAGES = ${JSON.stringify(Object.fromEntries(texts))};`;
}

/** For esbuild. */
export const virtualModules = {
  name: "virtual-modules",
  setup(builder) {
    builder.onResolve({ filter: /^virtual:/ }, ({ path }) => ({ path, namespace: "virtual" }));
    builder.onLoad({ filter: /.*/, namespace: "virtual" }, async ({ path }) => {
      const { make, from } = MADE.get(path);
      const watchDirs = from.map((folder) => join(ROOT, folder));
      return { contents: await make(), loader: "js", watchDirs };
    });
  },
};

/** For vite and vitest. */
export const virtualVitePlugin = {
  name: "virtual-modules",
  resolveId: (id) => (MADE.has(id) ? `\0${id}` : undefined),
  load: (id) => MADE.get(id.slice(1))?.make(),
};
