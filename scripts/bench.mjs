// Measures the language server on synthetic guides, through the real process over stdio, and the
// publishing of such guides with the command.
//   npm run bench                  all rows
//   npm run bench -- 100 1000      only the guides of so many steps
//   npm run bench -- figures       only the rows with that word in their name
//   npm run bench -- lists         only the reading of long parts lists
//   npm run bench -- compare       only the comparing of two long parts lists
//   npm run bench -- publish       only the publishing of guides
//   npm run bench -- --profile     a CPU profile of each server in dist/profiles/, from readable bundles
import { spawn } from "node:child_process";
import { once } from "node:events";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import remarkParse from "remark-parse";
import { unified } from "unified";
import {
  createMessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-jsonrpc/node";
import { measureComparing } from "./benchCompare.mjs";
import { synthesize } from "./benchGuide.mjs";
import { measureLists } from "./benchLists.mjs";
import { measurePreview } from "./benchPreview.mjs";
import { measurePublishing } from "./benchPublish.mjs";
import { build } from "./build.mjs";
import { ROOT } from "./run.mjs";

// Not on disk: the client serves them.
const FOLDER = "bench:/guides";
const GUIDE = `${FOLDER}/guide.md`;
const LIST = `${FOLDER}/parts.csv`;
const KEYSTROKES = 200;
const RAIL_CHANGES = 40;
const REQUESTS = 40;
/** Whether the servers write CPU profiles. */
const profiled = process.argv.includes("--profile");

class Client {
  constructor(list) {
    const flags = profiled ? ["--cpu-prof", `--cpu-prof-dir=${join(ROOT, "dist/profiles")}`] : [];
    const server = [join(ROOT, "dist/kitquill.mjs"), "lsp", "--stdio"];
    this.process = spawn(process.execPath, [...flags, ...server], {
      stdio: ["pipe", "pipe", "inherit"],
    });
    this.connection = createMessageConnection(
      new StreamMessageReader(this.process.stdout),
      new StreamMessageWriter(this.process.stdin),
    );
    this.waiting = new Map();
    this.connection.onNotification("textDocument/publishDiagnostics", (params) => {
      this.waiting.get(params.uri)?.(params);
    });
    this.connection.onRequest("kitquill/readFile", ({ uri }) =>
      uri === LIST
        ? { kind: "bytes", base64: Buffer.from(list).toString("base64") }
        : { kind: "missing" },
    );
    this.connection.onRequest("kitquill/findFiles", () => ({ uris: [] }));
    this.connection.listen();
  }

  async start() {
    await this.connection.sendRequest("initialize", {
      processId: process.pid,
      rootUri: FOLDER,
      capabilities: {},
      initializationOptions: { clientFiles: true },
    });
    await this.connection.sendNotification("initialized", {});
  }

  /** Sends a notification and waits until diagnostics for the guide come. */
  async until(method, params, isWanted = () => true) {
    const came = new Promise((resolve) => {
      this.waiting.set(GUIDE, (published) => {
        if (isWanted(published)) resolve(published);
      });
    });
    const start = performance.now();
    await this.connection.sendNotification(method, params);
    const published = await came;
    this.waiting.delete(GUIDE);
    return { ms: performance.now() - start, published };
  }

  /** CPU time used so far in ms and peak memory in MB, as the kernel counts them. */
  usage() {
    const stat = readFileSync(`/proc/${this.process.pid}/stat`, "utf8").split(") ")[1].split(" ");
    const status = readFileSync(`/proc/${this.process.pid}/status`, "utf8");
    return {
      cpu: (Number(stat[11]) + Number(stat[12])) * 10,
      peak: Number(/VmHWM:\s+(\d+)/.exec(status)[1]) / 1024,
    };
  }

  /** Resolves when the process has ended, and has written its profile. */
  async stop() {
    const ended = once(this.process, "exit");
    await this.connection.sendRequest("shutdown");
    await this.connection.sendNotification("exit");
    await ended;
    this.connection.dispose();
  }
}

async function measure(name, steps, how) {
  const { text, list } = synthesize(steps, how);
  const client = new Client(list);
  try {
    await client.start();
    // One finding that moves with every keystroke makes the server publish each time.
    const withProbe = text.replace("Solder [", "Solder [X999, ");
    const open = await client.until("textDocument/didOpen", {
      textDocument: { uri: GUIDE, languageId: "markdown", version: 0, text: withProbe },
    });
    if (open.published.diagnostics.some(({ code }) => code === "unreadable-list")) {
      throw new Error("The parts list was not read, so nothing would be measured.");
    }
    // A question is answered when all checks are done, those of the wording too.
    const all = performance.now();
    await client.connection.sendRequest("textDocument/hover", {
      textDocument: { uri: GUIDE },
      position: { line: 0, character: 0 },
    });
    const rest = performance.now() - all;
    const line = withProbe.split("\n").findIndex((one) => one.includes("X999"));
    const at = { line, character: withProbe.split("\n")[line].indexOf("Solder") };
    const document = new Document(client);
    const before = client.usage();
    const keys = await timesOf(KEYSTROKES, () => document.type(at, at, "x"));
    const after = client.usage();
    const rail = how.figures ? await changeRail(document, withProbe) : [];
    const afterRail = client.usage();
    const requests = how.requests ? await ask(document, withProbe) : {};
    return {
      guide: name,
      findings: open.published.diagnostics.length,
      "open ms": open.ms.toFixed(0),
      "all ms": (open.ms + rest).toFixed(0),
      "key p50 ms": share(keys, 0.5),
      "key p95 ms": share(keys, 0.95),
      "CPU/key ms": ((after.cpu - before.cpu) / KEYSTROKES).toFixed(1),
      "rail p50 ms": share(rail, 0.5),
      "rail p95 ms": share(rail, 0.95),
      "CPU/rail ms": rail.length && ((afterRail.cpu - after.cpu) / RAIL_CHANGES).toFixed(1),
      // Of opening and typing; requests and the preview load more.
      "peak MB": afterRail.peak.toFixed(0),
      ...requests,
      "peak of all MB": client.usage().peak.toFixed(0),
      "remark ms": wholeParse(text),
    };
  } finally {
    await client.stop();
  }
}

/** The guide as the editor holds it. */
class Document {
  version = 0;

  constructor(client) {
    this.client = client;
  }

  /** Puts a text between two places; resolves when the findings of that text have come. */
  type(start, end, text) {
    const version = ++this.version;
    return this.client.until(
      "textDocument/didChange",
      { textDocument: { uri: GUIDE, version }, contentChanges: [{ range: { start, end }, text }] },
      (published) => published.version === version,
    );
  }

  /** Puts a text at a place and asks at once, as an editor does; resolves with the answer. */
  async typeAndAsk(at, text, method, params) {
    const version = ++this.version;
    const contentChanges = [{ range: { start: at, end: at }, text }];
    const { connection } = this.client;
    void connection.sendNotification("textDocument/didChange", {
      textDocument: { uri: GUIDE, version },
      contentChanges,
    });
    return connection.sendRequest(method, { textDocument: { uri: GUIDE }, ...params });
  }
}

/** Times in ms, sorted, of so many runs. */
async function timesOf(count, run) {
  const times = [];
  for (let i = 1; i <= count; i++) {
    const start = performance.now();
    await run(i);
    times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b);
}

/** The time that the given share of the runs stays below; empty where there were none. */
function share(times, part) {
  return times.length > 0 ? times[Math.floor(times.length * part)].toFixed(1) : "";
}

/** Times of changing the rail that half of the figures depend on. */
function changeRail(document, text) {
  const line = text.split("\n").findIndex((one) => one.startsWith("supply:"));
  const character = text.split("\n")[line].indexOf("13.8") + "13.".length;
  const [start, end] = [0, 1].map((more) => ({ line, character: character + more }));
  return timesOf(RAIL_CHANGES, (i) => document.type(start, end, String(i % 8)));
}

/** Times of questions that follow a keystroke at once, in the middle of the guide. */
async function ask(document, text) {
  const lines = text.split("\n");
  const line = lines.findIndex((one, at) => at > lines.length / 2 && one.includes("Solder ["));
  const at = { line, character: lines[line].indexOf("Solder [") };
  const position = { line, character: lines[line].length - 1 };
  const after = (method, params) => () => document.typeAndAsk(at, "x", method, params);
  const hover = await timesOf(REQUESTS, after("textDocument/hover", { position }));
  const definition = await timesOf(REQUESTS, after("textDocument/definition", { position }));
  const behind = { ...at, character: at.character + 1 };
  const completion = await timesOf(REQUESTS, () =>
    document.typeAndAsk(at, "[", "textDocument/completion", { position: behind }),
  );
  const { client } = document;
  let { resultId } = await client.connection.sendRequest("textDocument/semanticTokens/full", {
    textDocument: { uri: GUIDE },
  });
  let numbers = 0;
  const tokens = await timesOf(REQUESTS, async () => {
    const method = "textDocument/semanticTokens/full/delta";
    const delta = await document.typeAndAsk(at, "x", method, { previousResultId: resultId });
    ({ resultId } = delta);
    const edits = delta.edits ?? [{ data: delta.data }];
    numbers = Math.max(numbers, ...edits.map(({ data }) => data?.length ?? 0));
  });
  return {
    "hover p95 ms": share(hover, 0.95),
    "definition p95 ms": share(definition, 0.95),
    "completion p95 ms": share(completion, 0.95),
    "tokens p95 ms": share(tokens, 0.95),
    "numbers sent": numbers,
    ...(await preview(document, at)),
  };
}

/** How soon the preview is there, and what is typed in the middle of the guide is in it. */
async function preview(document, at) {
  const { connection } = document.client;
  const rest = () =>
    connection.sendRequest("textDocument/hover", {
      textDocument: { uri: GUIDE },
      position: { line: 0, character: 0 },
    });
  const type = () => {
    const textDocument = { uri: GUIDE, version: ++document.version };
    const contentChanges = [{ range: { start: at, end: at }, text: "x" }];
    void connection.sendNotification("textDocument/didChange", { textDocument, contentChanges });
  };
  const { shown, times } = await measurePreview(connection, GUIDE, type, rest);
  return {
    "preview ms": shown.toFixed(0),
    "patch p50 ms": share(times, 0.5),
    "patch p95 ms": share(times, 0.95),
  };
}

/** remark-parse of the whole text in this run, as a measure of the machine. */
function wholeParse(text) {
  const start = performance.now();
  unified().use(remarkParse).parse(text);
  return (performance.now() - start).toFixed(0);
}

const ROWS = [
  ["100 steps", 100, {}],
  ["1,000 steps", 1000, { requests: true }],
  ["10,000 steps", 10_000, { requests: true }],
  ["1,000 without headings", 1000, { stageSize: 0 }],
  ["a stage of 500 steps", 500, { stageSize: 500 }],
  ["10,000 findings", 10_000, { fault: true }],
  ["10,000 steps, 2,000 figures", 10_000, { figures: 2000 }],
];

await build({ minify: !profiled });
const wanted = process.argv.slice(2).filter((word) => !word.startsWith("--"));
const isWanted = (name, steps) =>
  wanted.length === 0 ||
  wanted.some((word) => (/^\d+$/.test(word) ? Number(word) === steps : name.includes(word)));
const results = [];
for (const [name, steps, how] of ROWS) {
  if (!isWanted(name, steps)) continue;
  console.error(`measuring ${name} …`);
  results.push(await measure(name, steps, how));
}
if (results.length > 0) console.table(results);
if (wanted.length === 0 || wanted.includes("lists")) console.table(await measureLists());
if (wanted.length === 0 || wanted.includes("compare")) console.table(await measureComparing());
if (wanted.length === 0 || wanted.includes("publish")) {
  const { rows, ratio } = measurePublishing();
  console.table(rows);
  console.log(`Ten times the steps take ${ratio.toFixed(1)} times the processor's time.`);
}
