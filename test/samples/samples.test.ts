/** The sample kits: clean ones stay clean, each planted fault is found, hostile input is survived. */
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { URI } from "vscode-uri";
import { DEFAULT_SETTINGS, type Diagnosis, Service } from "../../server/src/service.ts";
import { DiskFiles } from "../../server/src/workspace/disk.ts";

const SAMPLES = fileURLToPath(new URL("../../samples", import.meta.url));
const ROOT = URI.file(SAMPLES).toString();

async function check(guide: string): Promise<readonly Diagnosis[]> {
  const service = new Service(new DiskFiles([ROOT]), {
    ...DEFAULT_SETTINGS,
    folders: [ROOT],
  });
  service.follow(`${ROOT}/${guide}`);
  await service.settle();
  return service.takeChanges().flatMap(({ diagnoses }) => diagnoses);
}

const brief = ({ uri, start, code, severity }: Diagnosis) =>
  `${uri.slice(ROOT.length + 1)}:${start.line + 1} ${severity} ${code}`;

describe("the sample kits", () => {
  test.each(["heron/heron.md", "constructs/guide.md"])(
    "%s has neither errors nor warnings",
    async (guide) => {
      const findings = await check(guide);
      const serious = findings.filter(({ severity }) => ["error", "warning"].includes(severity));
      expect(serious.map(brief)).toEqual([]);
    },
  );

  test.each(["plover/plover.md", "plover/plover.de.md"])(
    "%s has no finding at all",
    async (guide) => {
      expect((await check(guide)).map(brief)).toEqual([]);
    },
  );

  test.each(["heron", "plover"])(
    "the twin of %s with planted faults shows each at its line and nothing else serious",
    async (kit) => {
      const folder = `${kit}-faults`;
      const faults: { file: string; line: number; code: string }[] = JSON.parse(
        readFileSync(`${SAMPLES}/${folder}/faults.json`, "utf8"),
      );
      const place = (file: string, line: number, code: string) => `${file}:${line} ${code}`;
      const found = (await check(`${folder}/${kit}.md`)).map(({ uri, start, code, severity }) => ({
        at: place(uri.slice(`${ROOT}/${folder}/`.length), start.line + 1, code),
        serious: severity === "error" || severity === "warning",
      }));
      const planted = faults.map(({ file, line, code }) => place(file, line, code));
      const missed = planted.filter((at) => !found.some((one) => one.at === at));
      const extra = found.filter(({ at, serious }) => serious && !planted.includes(at));
      expect({ missed, extra }).toEqual({ missed: [], extra: [] });
    },
  );

  const hostile = readdirSync(`${SAMPLES}/hostile`).filter((name) => name.endsWith(".md"));
  test.each(hostile.filter((name) => name !== "README.md"))(
    "hostile/%s is answered, with every finding inside its file",
    async (name) => {
      for (const { span, start, end } of await check(`hostile/${name}`)) {
        expect(span.start).toBeLessThanOrEqual(span.end);
        expect(start.line).toBeLessThanOrEqual(end.line);
      }
    },
  );
});
