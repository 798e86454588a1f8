/**
 * Loads the server into a web worker. Editors start workers as classic scripts, and the server is a
 * module. The client says where it lies, for a script from another origin is not told its own address.
 */

declare const self: DedicatedWorkerGlobalScope;

self.onmessage = async ({ data: server }: MessageEvent<string>) => {
  try {
    await import(server);
    self.postMessage("loaded");
  } catch (error) {
    // Outside the promise, so that the client hears of it as an error of the worker.
    setTimeout(() => {
      throw error;
    });
  }
};

export {};
