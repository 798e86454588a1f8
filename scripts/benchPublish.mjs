// Measures `kitquill publish`, through the real command, on guides with pictures.
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { pathToFileURL } from "node:url";
import { synthesize } from "./benchGuide.mjs";
import { ROOT } from "./run.mjs";

/** What a photograph takes that was made ready for a page. */
const PICTURE_BYTES = 200_000;

/** How a JPEG begins (ITU-T T.81, annex B). */
const JPEG = [0xff, 0xd8, 0xff];

/** Writes a guide of so many steps, with a picture in every fifth, into a new folder. */
function writeGuide(steps, pictures) {
  const folder = mkdtempSync(join(tmpdir(), "kitquill-bench-"));
  const { text, list } = synthesize(steps, { pictures });
  writeFileSync(join(folder, "guide.md"), text);
  writeFileSync(join(folder, "parts.csv"), list);
  if (pictures > 0) mkdirSync(join(folder, "pictures"));
  for (let index = 0; index < pictures; index++) {
    const bytes = Buffer.alloc(PICTURE_BYTES, `${index} of these bytes. `);
    bytes.set(JPEG);
    writeFileSync(join(folder, `pictures/p${index}.jpg`), bytes);
  }
  return folder;
}

/** Publishes all outputs of the guide once, with pictures in the page. */
function publishOnce(folder) {
  const start = performance.now();
  const { status, stderr, output } = spawnSync(
    process.execPath,
    [
      ["--import", pathToFileURL(join(ROOT, "scripts/peak.mjs")).href],
      [join(ROOT, "dist/kitquill.mjs"), "publish", join(folder, "guide.md"), "--force"],
      ["--out", join(folder, "out")],
    ].flat(),
    { stdio: ["ignore", "ignore", "pipe", "pipe"], encoding: "utf8" },
  );
  const ms = performance.now() - start;
  if (status !== 0) throw new Error(`publish ended with ${status}: ${stderr}`);
  const [kilobytes, cpu] = output[3].split(" ").map(Number);
  const page = statSync(join(folder, "out/guide.html")).size / 1e6;
  return { ms, cpu, megabytes: kilobytes / 1024, page };
}

const TIMES = 3;

/** The quickest of some runs, and the most memory. */
function measure(name, steps, pictures) {
  const folder = writeGuide(steps, pictures);
  try {
    const runs = Array.from({ length: TIMES }, () => publishOnce(folder));
    return {
      publish: name,
      ms: Math.min(...runs.map(({ ms }) => ms)),
      cpu: Math.min(...runs.map(({ cpu }) => cpu)),
      megabytes: Math.max(...runs.map(({ megabytes }) => megabytes)),
      page: runs[0].page,
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const ROWS = [
  ["1,000 steps, 200 pictures", 1000, 200],
  ["1,000 steps", 1000, 0],
  ["10,000 steps", 10_000, 0],
];

/** Rows of the table, and last how publishing grows from the small guide to one of ten times its size. */
export function measurePublishing() {
  const measured = ROWS.map(([name, steps, pictures]) => {
    console.error(`publishing ${name} …`);
    return measure(name, steps, pictures);
  });
  const [, small, large] = measured;
  const rows = measured.map(({ publish, ms, cpu, megabytes, page }) => ({
    publish,
    ms: ms.toFixed(0),
    "CPU ms": cpu.toFixed(0),
    "peak MB": megabytes.toFixed(0),
    "page MB": page.toFixed(1),
  }));
  return { rows, ratio: large.cpu / small.cpu };
}
