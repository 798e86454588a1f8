/** How a server process ends and what it reads by itself, from a bundle made as the build makes it. */
import { type ChildProcess, fork, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { createMessageConnection, IPCMessageReader, IPCMessageWriter } from "vscode-jsonrpc/node";
import type { PublishDiagnosticsParams } from "vscode-languageserver";
import {
  type ClientOffers,
  READ_FILE,
  type ReadFileParams,
  type ReadFileResult,
} from "../../server/src/lsp/protocol.ts";
import { Cli } from "../cli/cli.ts";

let cli: Cli;
const started: ChildProcess[] = [];
beforeAll(async () => {
  cli = await Cli.build();
});
afterAll(() => {
  for (const child of started) child.kill();
  cli.remove();
});

/** A server over IPC, as an editor starts it. */
async function serverFor(editor: number, offers: Partial<ClientOffers> = {}) {
  const server = fork(join(dirname(cli.bundle), "server.mjs"), ["--node-ipc"]);
  started.push(server);
  const connection = createMessageConnection(
    new IPCMessageReader(server),
    new IPCMessageWriter(server),
  );
  connection.listen();
  const initializationOptions = offers;
  const params = { processId: editor, rootUri: null, capabilities: {}, initializationOptions };
  await connection.sendRequest("initialize", params);
  return { server, connection, ended: once(server, "exit") };
}

test("it ends when it is told to after its shutdown", async () => {
  const { connection, ended } = await serverFor(process.pid);
  expect(await connection.sendRequest("shutdown")).toBeNull();
  await connection.sendNotification("exit");
  expect(await ended).toEqual([0, null]);
});

test("it ends with an error when it is told to without a shutdown", async () => {
  const { connection, ended } = await serverFor(process.pid);
  await connection.sendNotification("exit");
  expect(await ended).toEqual([1, null]);
});

test("it ends when its editor is gone", async () => {
  const editor = spawn(process.execPath, ["-e", "setInterval(() => {}, 1000)"]);
  const { ended } = await serverFor(editor.pid!);
  editor.kill();
  expect(await ended).toEqual([1, null]);
});

test("it ends when its input ends", async () => {
  const server = spawn(process.execPath, [cli.bundle, "lsp", "--stdio"]);
  server.stdin.end();
  expect(await once(server, "exit")).toEqual([1, null]);
});

test("files on disk are read there, and others through the editor", async () => {
  const { connection } = await serverFor(process.pid, { clientFiles: true });
  const folder = mkdtempSync(join(tmpdir(), "files-"));
  const list = "Designator,Value\nR1,1k\n";
  writeFileSync(join(folder, "parts.csv"), list);
  const asked: string[] = [];
  connection.onRequest<ReadFileResult, void>(READ_FILE, ({ uri }: ReadFileParams) => {
    asked.push(uri);
    return { kind: "bytes", base64: btoa(list) };
  });
  const published: PublishDiagnosticsParams[] = [];
  connection.onNotification(
    "textDocument/publishDiagnostics",
    (params: PublishDiagnosticsParams) => void published.push(params),
  );
  const guides = [`${pathToFileURL(folder).href}/g.md`, "far://host/kit/g.md"];
  for (const uri of guides) {
    const text = "---\nparts: parts.csv\n---\n\n## A\n\n1. Fit [R1], [R2].\n";
    const textDocument = { uri, languageId: "markdown", version: 1, text };
    await connection.sendNotification("textDocument/didOpen", { textDocument });
  }
  await vi.waitFor(() => {
    for (const guide of guides) {
      const own = published.findLast(({ uri }) => uri === guide);
      expect(own?.diagnostics.map(({ code }) => code)).toContain("unknown-part");
    }
  }, 20_000);
  expect(new Set(asked)).toEqual(new Set(["far://host/kit/parts.csv"]));
  rmSync(folder, { recursive: true });
});

test("it says that there is no such request", async () => {
  const { server, connection } = await serverFor(process.pid);
  await expect(connection.sendRequest("no/such")).rejects.toThrow("There is no no/such here.");
  server.kill();
});
