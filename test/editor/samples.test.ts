/** The sample guides in a real editor, held against what the command line says of them. */
import { spawnSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { type Editor, start } from "./driver.ts";

const ROOT = join(import.meta.dirname, "../..");
/** Tall enough for the Problems view to show every entry at once. */
const TALL = { width: 1400, height: 3000 };
/** The view has no hints. */
const SHOWN: Readonly<Record<string, string>> = {
  error: "Error",
  warning: "Warning",
  information: "Info",
};

interface Entry {
  readonly code: string;
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

interface Finding extends Entry {
  readonly severity: string;
}

const samples = readdirSync(join(ROOT, "samples")).filter((name) => name.startsWith("heron"));
let editor: Editor;

afterEach(() => editor?.close());

/** The guide in a folder and its findings, from the command line. */
function check(folder: string): { guide: string; findings: Finding[] } {
  const cli = join(ROOT, "dist/kitquill.mjs");
  const { stdout } = spawnSync(process.execPath, [cli, "check", "--format=json"], { cwd: folder });
  const [report, ...others] = JSON.parse(stdout.toString()).files;
  expect(others).toEqual([]);
  return { guide: report.file, findings: report.findings };
}

function brief(found: Entry, severity: string | undefined): string {
  return `${found.file}:${found.line}:${found.column} ${severity} ${found.code}`;
}

/** Adds a fault at the end of the file, so that a clean guide too has something to wait for. */
async function plantFault(): Promise<string> {
  await editor.press("Control+End");
  await editor.typeText("\n\nFit [ZZ99].");
  const { file, line } = await editor.cursor();
  return brief({ file, line, column: "Fit [".length + 1, code: "unknown-part" }, "Error");
}

test.each(samples)(
  "%s shows what the command line reports, and a fault just typed",
  async (name) => {
    const folder = join(ROOT, "samples", name);
    const { guide, findings } = check(folder);
    const shown = findings.filter(({ severity }) => severity in SHOWN);
    editor = await start({ folder });
    await editor.page.setViewportSize(TALL);
    await editor.openFile(guide);
    const planted = await plantFault();
    await editor.problems();
    await editor.command("View: Toggle Maximized Panel");
    const expected = [...shown.map((one) => brief(one, SHOWN[one.severity])), planted].sort();
    const seen = await editor.eventually(
      async () => (await editor.problems()).map((one) => brief(one, one.severity)).sort(),
      (entries) => entries.length >= expected.length && entries.includes(planted),
    );
    expect(seen).toEqual(expected);
    await editor.screenshot(`sample-${name}`);
  },
);
