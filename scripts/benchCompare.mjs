// How long `kitquill compare` takes for two long parts lists of one part a line, every thousandth of
// another value: the whole command, and the processor's time, which a busy machine does not stretch.
import { spawn } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { ROOT } from "./run.mjs";

const LINES = 100_000;
const EVERY = 1000;
const RUNS = 3;

/** Has the command tell the processor's time that it took, in ms, when it ends. */
const TELL_TIME = `data:text/javascript,${encodeURIComponent(
  "process.on('exit', () => { const { user, system } = process.cpuUsage(); process.stderr.write(String((user + system) / 1000)); });",
)}`;

const VALUES = ["4k7", "10k", "100n", "1u", "2k2", "470R", "22p", "1M"];
const HEADER = "Item,Reference,Qty,Value,Tolerance,Voltage,Footprint,Description";

function list(isRevised) {
  const rows = [HEADER];
  for (let line = 0; line < LINES; line++) {
    const value = isRevised && line % EVERY === 0 ? "5k6" : VALUES[line % VALUES.length];
    const isCapacitor = /[npu]$/.test(VALUES[line % VALUES.length]);
    const name = `${isCapacitor ? "C" : "R"}${line + 1}`;
    const footprint = isCapacitor ? "C_Disc_D5.0mm_P5.00mm" : "R_Axial_DIN0207_L6.3mm_D2.5mm";
    rows.push(`${line + 1},${name},1,${value},5 %,50 V,${footprint},"ceramic or film, 0.25 W"`);
  }
  return `${rows.join("\n")}\n`;
}

/** Milliseconds of the fastest run, by the clock and by the processor, and what it found. */
export async function measureComparing() {
  const folder = mkdtempSync(join(tmpdir(), "compare-"));
  try {
    writeFileSync(join(folder, "old.csv"), list(false));
    writeFileSync(join(folder, "new.csv"), list(true));
    let best = { ms: Number.POSITIVE_INFINITY, cpu: 0, changed: 0 };
    for (let run = 0; run < RUNS; run++) {
      const one = await compare(folder);
      if (one.ms < best.ms) best = one;
    }
    const { ms, cpu, changed } = best;
    return [
      { lists: `two of ${LINES} lines`, ms: ms.toFixed(0), "CPU ms": cpu.toFixed(0), changed },
    ];
  } finally {
    rmSync(folder, { recursive: true });
  }
}

async function compare(folder) {
  const start = performance.now();
  const command = join(ROOT, "dist/kitquill.mjs");
  const args = [
    "--import",
    TELL_TIME,
    command,
    "compare",
    "old.csv",
    "new.csv",
    "--format",
    "json",
  ];
  const child = spawn(process.execPath, args, { cwd: folder, stdio: ["ignore", "pipe", "pipe"] });
  let out = "";
  child.stdout.setEncoding("utf8").on("data", (text) => {
    out += text;
  });
  let told = "";
  child.stderr.setEncoding("utf8").on("data", (text) => {
    told += text;
  });
  await new Promise((resolve, reject) => child.on("error", reject).on("close", resolve));
  const ms = performance.now() - start;
  return { ms, cpu: Number(told), changed: JSON.parse(out).changed.length };
}
