// The published page's script and style as a module of texts. Always
// minified, so that a page is the same whichever build has made it.
import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { build, transform } from "esbuild";
import { ROOT } from "./run.mjs";

export async function pageModule() {
  const { outputFiles } = await build({
    entryPoints: [join(ROOT, "server/page/src/main.ts")],
    absWorkingDir: ROOT,
    bundle: true,
    write: false,
    minify: true,
    charset: "utf8",
    platform: "browser",
    target: "es2022",
    format: "iife",
    logLevel: "error",
  });
  // `</script` in a text of it would end the script.
  const script = outputFiles[0].text.trim().replaceAll("</", "<\\/");
  const css = await readFile(join(ROOT, "server/page/page.css"), "utf8");
  const { code: style } = await transform(css, { loader: "css", minify: true, charset: "utf8" });
  const hash = `sha256-${createHash("sha256").update(script).digest("base64")}`;
  const texts = { SCRIPT: script, SCRIPT_HASH: hash, STYLE: style };
  return Object.entries(texts)
    .map(([name, text]) => `export const ${name} = ${JSON.stringify(text)};`)
    .join("\n");
}
