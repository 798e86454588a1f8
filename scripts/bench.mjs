// Measures the language server on synthetic guides, through the real process over stdio, and the
// publishing of such guides with the command.
//   npm run bench                  all rows
//   npm run bench -- 100 1000      only the guides of so many steps
//   npm run bench -- figures       only the rows with that word in their name
//   npm run bench -- publish       only the publishing of guides
import { spawn } from "node:child_process";
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
import { synthesize } from "./benchGuide.mjs";
import { measurePublishing } from "./benchPublish.mjs";
import { build } from "./build.mjs";
import { ROOT } from "./run.mjs";

const GUIDE = "file:///bench/guide.md";
const LIST = "file:///bench/parts.csv";
const KEYSTROKES = 200;
const RAIL_CHANGES = 40;
class Client {
  constructor(list) {
    this.process = spawn(process.execPath, [join(ROOT, "dist/kitquill.mjs"), "lsp", "--stdio"], {
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
      rootUri: "file:///bench",
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

  stop() {
    this.connection.dispose();
    this.process.kill();
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
    // A question is answered when all checks are done, those of the wording too.
    const all = performance.now();
    await client.connection.sendRequest("textDocument/hover", {
      textDocument: { uri: GUIDE },
      position: { line: 0, character: 0 },
    });
    const rest = performance.now() - all;
    const line = withProbe.split("\n").findIndex((one) => one.includes("X999"));
    const character = withProbe.split("\n")[line].indexOf("Solder");
    const before = client.usage();
    const times = [];
    for (let i = 1; i <= KEYSTROKES; i++) {
      const position = { line, character };
      const change = { range: { start: position, end: position }, text: "x" };
      const { ms } = await client.until(
        "textDocument/didChange",
        { textDocument: { uri: GUIDE, version: i }, contentChanges: [change] },
        ({ version }) => version === i,
      );
      times.push(ms);
    }
    const after = client.usage();
    const rail = how.figures ? await changeRail(client, withProbe) : [];
    times.sort((a, b) => a - b);
    return {
      guide: name,
      findings: open.published.diagnostics.length,
      "open ms": open.ms.toFixed(0),
      "all ms": (open.ms + rest).toFixed(0),
      "key p50 ms": times[Math.floor(KEYSTROKES * 0.5)].toFixed(1),
      "key p95 ms": times[Math.floor(KEYSTROKES * 0.95)].toFixed(1),
      "rail p50 ms": rail.length > 0 ? rail[Math.floor(rail.length * 0.5)].toFixed(1) : "",
      "rail p95 ms": rail.length > 0 ? rail[Math.floor(rail.length * 0.95)].toFixed(1) : "",
      "CPU/key ms": ((after.cpu - before.cpu) / KEYSTROKES).toFixed(1),
      "peak MB": after.peak.toFixed(0),
      "remark ms": wholeParse(text),
    };
  } finally {
    client.stop();
  }
}

/** Times in ms, sorted, of changing the rail that half of the figures depend on. */
async function changeRail(client, text) {
  const line = text.split("\n").findIndex((one) => one.startsWith("supply:"));
  const character = text.split("\n")[line].indexOf("13.8") + "13.".length;
  const times = [];
  for (let i = 1; i <= RAIL_CHANGES; i++) {
    const version = KEYSTROKES + i;
    const range = { start: { line, character }, end: { line, character: character + 1 } };
    const { ms } = await client.until(
      "textDocument/didChange",
      { textDocument: { uri: GUIDE, version }, contentChanges: [{ range, text: String(i % 8) }] },
      (published) => published.version === version,
    );
    times.push(ms);
  }
  return times.sort((a, b) => a - b);
}

/** remark-parse of the whole text in this run, as a measure of the machine. */
function wholeParse(text) {
  const start = performance.now();
  unified().use(remarkParse).parse(text);
  return (performance.now() - start).toFixed(0);
}

const ROWS = [
  ["100 steps", 100, {}],
  ["1,000 steps", 1000, {}],
  ["10,000 steps", 10_000, {}],
  ["1,000 without headings", 1000, { stageSize: 0 }],
  ["a stage of 500 steps", 500, { stageSize: 500 }],
  ["10,000 findings", 10_000, { fault: true }],
  ["10,000 steps, 2,000 figures", 10_000, { figures: 2000 }],
];

await build({ minify: true });
const wanted = process.argv.slice(2);
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
if (wanted.length === 0 || wanted.includes("publish")) {
  const { rows, ratio } = measurePublishing();
  console.table(rows);
  console.log(`Ten times the steps take ${ratio.toFixed(1)} times the processor's time.`);
}
