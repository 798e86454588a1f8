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

/** A message to itself comes behind those that wait. A timer would rest for 4 ms once it is asked often. */
const turns = new MessageChannel();
const paused: (() => void)[] = [];
turns.port1.onmessage = () => paused.shift()?.();

serve(connection, {
  pause: () =>
    new Promise((resolve) => {
      paused.push(resolve);
      turns.port2.postMessage(undefined);
    }),
  now: () => performance.now(),
  files: () => new ClientFiles(connection),
});
