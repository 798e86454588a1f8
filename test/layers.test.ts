/**
 * The rules of the layers: each knows only those above it in the list, and few places reach
 * outside the analysis.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { type Import, importsIn, sourcesIn } from "./imports.ts";

/** From the bottom up; a layer may import from itself and from those before it. */
const LAYERS = [
  "text",
  "quantity",
  "syntax",
  "trade",
  "model",
  "checks",
  "features",
  "publish",
  "workspace",
  "service.ts",
  "lsp",
  "main-worker.ts",
  "start-worker.ts",
  "main-node.ts",
  "cli",
];

/** What comes from outside, and the places in server/src that may use it. */
const OUTSIDE: readonly { readonly what: RegExp; readonly allowed: RegExp }[] = [
  { what: /^node:/, allowed: /^(workspace\/disk\.ts|cli\/|main-node\.ts)/ },
  { what: /^vscode$|^vscode-languageclient|^client\//, allowed: /^(?!)/ },
  { what: /^vscode-(languageserver|jsonrpc)/, allowed: /^(lsp\/|main-node\.ts|main-worker\.ts)/ },
  {
    what: /^(unified|unist-|micromark|mdast-|remark|rehype|hast-)/,
    allowed: /^(syntax|publish)\//,
  },
];

/** The one file that the client shares with the server, and those it hands on, which import nothing. */
const PROTOCOL = "server/src/lsp/protocol.ts";
const HANDED_ON = ["server/src/publish/replacing.ts", "server/src/features/start/kitName.ts"];
const SERVER = "server/src/";

/** What is wrong with an import in server/src; undefined when it is in order. */
function serverFault({ from, to }: Import): string | undefined {
  const file = from.slice(SERVER.length);
  if (!to.startsWith(SERVER)) {
    const broken = OUTSIDE.some(({ what, allowed }) => what.test(to) && !allowed.test(file));
    return broken ? `${from} must not import ${to}` : undefined;
  }
  const [importer, imported] = [layerOf(from), layerOf(to)];
  if (importer < 0) return `${from} is in no layer`;
  return imported > importer ? `${from} reaches up to ${to}` : undefined;
}

/** What is wrong with an import in client/src. */
function clientFault({ from, to }: Import): string | undefined {
  const known =
    from === PROTOCOL
      ? HANDED_ON.includes(to)
      : !HANDED_ON.includes(from) && (to === PROTOCOL || to.startsWith("client/src/"));
  const outside = /^vscode(-languageclient(\/node|\/browser)?)?$/.test(to);
  return known || outside ? undefined : `${from} must not import ${to}`;
}

function layerOf(path: string): number {
  return LAYERS.indexOf(path.slice(SERVER.length).split("/")[0]!);
}

function faults(imports: readonly Import[], fault: (one: Import) => string | undefined): string[] {
  return imports.map(fault).filter((message) => message !== undefined);
}

describe("the rules", () => {
  test.each([
    ["server/src/text/span.ts", "server/src/syntax/dialect.ts"],
    ["server/src/checks/unknown-part.ts", "server/src/workspace/files.ts"],
    ["server/src/service.ts", "server/src/lsp/server.ts"],
    ["server/src/main-worker.ts", "server/src/main-node.ts"],
  ])("forbid that %s reaches up to %s", (from, to) => {
    expect(serverFault({ from, to })).toBe(`${from} reaches up to ${to}`);
  });

  test.each([
    ["server/src/workspace/files.ts", "node:fs"],
    ["server/src/main-worker.ts", "node:fs"],
    ["server/src/lsp/server.ts", "vscode"],
    ["server/src/cli/publish.ts", "client/src/files.ts"],
    ["server/src/features/hover.ts", "vscode-languageserver-types"],
    ["server/src/model/guide.ts", "unified"],
    ["server/src/checks/mark-syntax.ts", "micromark-util-types"],
  ])("forbid that %s imports %s", (from, to) => {
    expect(serverFault({ from, to })).toBe(`${from} must not import ${to}`);
  });

  test("forbid a file in no layer", () => {
    const from = "server/src/helpers/a.ts";
    expect(serverFault({ from, to: "server/src/text/span.ts" })).toBe(`${from} is in no layer`);
  });

  test.each([
    ["server/src/syntax/dialect.ts", "server/src/text/span.ts"],
    ["server/src/syntax/markdown.ts", "micromark"],
    ["server/src/workspace/disk.ts", "node:fs/promises"],
    ["server/src/lsp/server.ts", "vscode-languageserver/browser"],
    ["server/src/cli/lsp.ts", "server/src/main-node.ts"],
    ["server/src/workspace/files.ts", "vscode-uri"],
  ])("let %s import %s", (from, to) => {
    expect(serverFault({ from, to })).toBeUndefined();
  });

  test("let the client know the protocol and nothing else of the server", () => {
    const from = "client/src/files.ts";
    expect(clientFault({ from, to: PROTOCOL })).toBeUndefined();
    for (const to of HANDED_ON) expect(clientFault({ from: PROTOCOL, to })).toBeUndefined();
    for (const to of ["server/src/service.ts", ...HANDED_ON, "node:fs"]) {
      expect(clientFault({ from, to })).toBe(`${from} must not import ${to}`);
    }
  });
});

test("the server's sources keep to their layers", async () => {
  const imports = await importsIn("server/src");
  // Fewer would mean that the account is not of the whole server.
  expect(new Set(imports.map(({ from }) => from)).size).toBeGreaterThan(50);
  expect(faults(imports, serverFault)).toEqual([]);
});

test("the client's sources know only the editor and the protocol", async () => {
  const imports = await importsIn("client/src");
  expect(imports).toContainEqual({ from: "client/src/files.ts", to: PROTOCOL });
  expect(faults(imports, clientFault)).toEqual([]);
});

test("the scripts of the pages know only what they show", async () => {
  const known: Readonly<Record<string, RegExp>> = {
    "client/page/src":
      /^(client\/page\/|client\/src\/preview\/messages\.ts|server\/src\/lsp\/protocol\.ts)/,
    "server/page/src": /^server\/(page|src\/trade)\//,
  };
  for (const [folder, allowed] of Object.entries(known)) {
    const imports = (await importsIn(folder)).filter(({ from }) => from.startsWith(folder));
    expect(imports.length).toBeGreaterThan(3);
    expect(imports.filter(({ to }) => !allowed.test(to))).toEqual([]);
  }
});

test("the analysis has no clock, no randomness and no output of its own", () => {
  const outside = /^server\/src\/(cli\/|lsp\/|main-|workspace\/disk\.ts)/;
  const sources = sourcesIn("server/src").filter((path) => !outside.test(path));
  const restless =
    /\b(Date\.now|new Date\b|performance\.now|Math\.random|crypto\.|console\.|process\.)/;
  const found = sources.filter((path) => restless.test(readFileSync(path, "utf8")));
  expect(found).toEqual([]);
});
