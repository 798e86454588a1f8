/** Folders as the client lists them for a server without a file system. */
import { PassThrough } from "node:stream";
import { expect, test } from "vitest";
import {
  createMessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-jsonrpc/node";
import { ClientFiles } from "../../server/src/lsp/clientFiles.ts";
import {
  LIST_FOLDER,
  type ListFolderParams,
  type ListFolderResult,
} from "../../server/src/lsp/protocol.ts";

test("A folder comes sorted, with the addresses of what it holds; one that is not there is told", async () => {
  const [there, back] = [new PassThrough(), new PassThrough()];
  const server = createMessageConnection(
    new StreamMessageReader(back),
    new StreamMessageWriter(there),
  );
  const client = createMessageConnection(
    new StreamMessageReader(there),
    new StreamMessageWriter(back),
  );
  client.onRequest<ListFolderResult, void>(LIST_FOLDER, ({ uri }: ListFolderParams) =>
    uri === "far://host/kit"
      ? {
          kind: "entries",
          entries: [
            { name: "my parts.csv", kind: "file" },
            { name: "lists", kind: "folder" },
          ],
        }
      : { kind: "missing" },
  );
  for (const connection of [server, client]) connection.listen();
  const files = new ClientFiles(server);
  expect(await files.list("far://host/kit")).toEqual([
    { name: "lists", kind: "folder", uri: "far://host/kit/lists" },
    { name: "my parts.csv", kind: "file", uri: "far://host/kit/my%20parts.csv" },
  ]);
  await expect(files.list("far://host/lost")).rejects.toThrow("The folder cannot be read.");
  for (const connection of [server, client]) connection.dispose();
});
