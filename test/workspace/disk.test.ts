import { execFileSync } from "node:child_process";
import { chmodSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { URI } from "vscode-uri";
import { DiskFiles } from "../../server/src/workspace/disk.ts";

const root = mkdtempSync(join(tmpdir(), "disk-"));
const kits = join(root, "kits");
mkdirSync(join(kits, "sub"), { recursive: true });
afterAll(() => rmSync(root, { recursive: true }));

const uri = (...path: string[]) => URI.file(join(root, ...path)).toString();

/** The text read, or the kind and message of the refusal. */
async function read(files: DiskFiles, at: string): Promise<string | undefined> {
  try {
    const bytes = await files.read(at);
    return bytes && new TextDecoder().decode(bytes);
  } catch (error) {
    const { kind, message } = error as { kind: string; message: string };
    return `${kind}: ${message}`;
  }
}

describe("reading from disk", () => {
  const files = new DiskFiles([uri("kits")], 1000);

  test("gives the bytes, whatever the name", async () => {
    writeFileSync(join(kits, "50% ü #1?.csv"), "R1,R2");
    expect(await read(files, uri("kits", "50% ü #1?.csv"))).toBe("R1,R2");
  });

  test("gives nothing for a file that is not there", async () => {
    expect(await read(files, uri("kits", "none.csv"))).toBeUndefined();
    writeFileSync(join(kits, "file"), "");
    expect(await read(files, uri("kits", "file", "none.csv"))).toBeUndefined();
    expect(await read(files, "untitled:Untitled-1")).toBeUndefined();
  });

  test("tells why a file is refused", async () => {
    expect(await read(files, uri("kits", "sub"))).toBe("folder: `sub` is a folder.");
    writeFileSync(join(kits, "big.csv"), "x".repeat(1001));
    expect(await read(files, uri("kits", "big.csv"))).toMatch(/^too-large: `big.csv` has/);
    symlinkSync("loop.csv", join(kits, "loop.csv"));
    expect(await read(files, uri("kits", "loop.csv"))).toMatch(/^broken: .*leads back to itself/);
    expect(await read(files, uri("kits", `${"x".repeat(300)}.csv`))).toMatch(/^broken: .*longer/);
  });

  test.skipIf(process.platform === "win32")("never waits for a pipe or a device", async () => {
    execFileSync("mkfifo", [join(kits, "pipe.csv")]);
    expect(await read(files, uri("kits", "pipe.csv"))).toMatch(/^no-file/);
    expect(await read(new DiskFiles(), "file:///dev/zero")).toMatch(/^no-file/);
  });

  test.runIf(process.platform === "linux")("does not believe the size a file claims", async () => {
    // Files of the kernel claim to be empty.
    expect(await read(new DiskFiles([], 100), "file:///proc/self/status")).toMatch(/^too-large/);
  });

  test.skipIf(process.platform === "win32" || process.getuid?.() === 0)(
    "tells a denied permission apart (not testable as root)",
    async () => {
      writeFileSync(join(kits, "denied.csv"), "R1");
      chmodSync(join(kits, "denied.csv"), 0);
      expect(await read(files, uri("kits", "denied.csv"))).toMatch(/^denied/);
    },
  );
});

describe("links", () => {
  writeFileSync(join(root, "outside.csv"), "secret");
  writeFileSync(join(kits, "inside.csv"), "R1");
  symlinkSync(join(root, "outside.csv"), join(kits, "out.csv"));
  symlinkSync(join(kits, "inside.csv"), join(kits, "in.csv"));
  symlinkSync(root, join(kits, "up"));
  const files = new DiskFiles([uri("kits")]);

  test("that stay inside are followed", async () => {
    expect(await read(files, uri("kits", "in.csv"))).toBe("R1");
  });

  test("that lead out are refused, as files and as folders on the way", async () => {
    expect(await read(files, uri("kits", "out.csv"))).toMatch(/^outside: /);
    expect(await read(files, uri("kits", "up", "outside.csv"))).toMatch(/^outside: /);
  });

  test("are followed anywhere where reading keeps to no folder", async () => {
    expect(await read(new DiskFiles(), uri("kits", "out.csv"))).toBe("secret");
  });

  test("may lead from one open folder to another, and the folder may be a link itself", async () => {
    expect(await read(new DiskFiles([uri("kits"), uri()]), uri("kits", "out.csv"))).toBe("secret");
    symlinkSync(kits, join(root, "alias"));
    expect(await read(new DiskFiles([uri("alias")]), uri("alias", "inside.csv"))).toBe("R1");
  });
});

test("a folder is listed by name, without links", async () => {
  mkdirSync(join(root, "listed", "b"), { recursive: true });
  writeFileSync(join(root, "listed", "a.md"), "");
  symlinkSync(root, join(root, "listed", "c"));
  const entries = await new DiskFiles().list(uri("listed"));
  expect(entries.map(({ name, kind }) => [name, kind])).toEqual([
    ["a.md", "file"],
    ["b", "folder"],
  ]);
  await expect(new DiskFiles().list(uri("none"))).rejects.toThrow("cannot be read");
});
