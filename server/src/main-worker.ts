/** Entry of the language server in a web worker. */
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createConnection,
} from "vscode-languageserver/browser";
import { ClientFiles } from "./lsp/clientFiles.ts";
import { serve } from "./lsp/server.ts";

declare const self: DedicatedWorkerGlobalScope;

const connection = createConnection(new BrowserMessageReader(self), new BrowserMessageWriter(self));

serve(connection, {
  pause: () => new Promise((resolve) => setTimeout(resolve, 0)),
  now: () => performance.now(),
  files: () => new ClientFiles(connection),
});
connection.listen();
