/** Entry of the language server in a web worker. */
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createMessageConnection,
} from "vscode-jsonrpc/browser";
import { ClientFiles } from "./lsp/clientFiles.ts";
import { serve } from "./lsp/server.ts";

declare const self: DedicatedWorkerGlobalScope;

const connection = createMessageConnection(
  new BrowserMessageReader(self),
  new BrowserMessageWriter(self),
);

serve(connection, {
  pause: () => new Promise((resolve) => setTimeout(resolve, 0)),
  now: () => performance.now(),
  files: () => new ClientFiles(connection),
});
