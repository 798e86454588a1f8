/** How a server process ends, from a bundle made as the build makes it. */
import { type ChildProcess, fork, spawn } from "node:child_process";
import { once } from "node:events";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { createMessageConnection, IPCMessageReader, IPCMessageWriter } from "vscode-jsonrpc/node";
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
async function serverFor(editor: number) {
  const server = fork(join(dirname(cli.bundle), "server.mjs"), ["--node-ipc"]);
  started.push(server);
  const connection = createMessageConnection(
    new IPCMessageReader(server),
    new IPCMessageWriter(server),
  );
  connection.listen();
  const params = { processId: editor, rootUri: null, capabilities: {} };
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

test("it says that there is no such request", async () => {
  const { server, connection } = await serverFor(process.pid);
  await expect(connection.sendRequest("no/such")).rejects.toThrow("There is no no/such here.");
  server.kill();
});
