/** What is in the bundles that are loaded at the start, from esbuild's account of them. */
import { build, type Metafile } from "esbuild";
import { describe, expect, test } from "vitest";
import { BUILDS, optionsOf } from "../scripts/build.mjs";
import { NOT_OFFERED } from "../scripts/clientLibrary.mjs";
import { capabilitiesFor } from "../server/src/lsp/capabilities.ts";

type Outputs = Metafile["outputs"];

/** What reads workbooks and netlists, and the packages for that. */
const FOR_SHEETS = /node_modules\/(?:fflate|saxes|xmlchars)\/|server\/src\/syntax\/sheets\//;

async function outputsOf(name: string): Promise<Outputs> {
  const wanted = BUILDS.find((one) => one.name === name)!;
  const options = optionsOf(wanted, { into: "unused" });
  const { metafile } = await build({ ...options, write: false, sourcemap: false });
  return metafile!.outputs;
}

/** Sources of a bundle and of what it imports before it runs. */
function sourcesAtStart(outputs: Outputs, path: string, seen = new Set<string>()): string[] {
  if (seen.has(path)) return [];
  seen.add(path);
  const { inputs, imports } = outputs[path]!;
  const parts = imports.filter(({ kind, external }) => kind === "import-statement" && !external);
  return [
    ...Object.entries(inputs).flatMap(([source, { bytesInOutput }]) =>
      bytesInOutput > 0 ? [source] : [],
    ),
    ...parts.flatMap((part) => sourcesAtStart(outputs, part.path, seen)),
  ];
}

describe("what reads workbooks and netlists", async () => {
  const outputs = await outputsOf("server");

  test.each(["server/src/main-node.ts", "server/src/main-worker.ts", "server/src/cli/compare.ts"])(
    "is not loaded with %s",
    (source) => {
      const [path] = Object.entries(outputs).find(([, one]) => one.entryPoint === source)!;
      const sources = sourcesAtStart(outputs, path);
      expect(sources).toContain("server/src/model/list/load.ts");
      expect(sources.filter((source) => FOR_SHEETS.test(source))).toEqual([]);
    },
  );

  test("is in one file of its own that the others load on demand", () => {
    const holding = Object.entries(outputs).filter(([, { inputs }]) =>
      Object.keys(inputs).some((source) => /node_modules\/(?:fflate|saxes)\//.test(source)),
    );
    expect(holding).toHaveLength(1);
    const [path] = holding[0]!;
    const importers = Object.values(outputs).flatMap(({ imports }) =>
      imports.filter((one) => one.path === path).map(({ kind }) => kind),
    );
    expect(importers.length).toBeGreaterThan(0);
    expect(new Set(importers)).toEqual(new Set(["dynamic-import"]));
  });

  test("is not in the client", async () => {
    const client = await outputsOf("client");
    const sources = sourcesAtStart(client, "unused/client.cjs");
    expect(sources.filter((source) => FOR_SHEETS.test(source))).toEqual([]);
  });
});

test("the client leaves out of its library only what the server does not offer", async () => {
  const offered = Object.keys(capabilitiesFor({}));
  expect(offered).toContain("renameProvider");
  expect(offered.filter((one) => Object.values(NOT_OFFERED).includes(one))).toEqual([]);
  const sources = sourcesAtStart(await outputsOf("client"), "unused/client.cjs");
  for (const file of Object.keys(NOT_OFFERED)) {
    expect(sources).toContain(`node_modules/vscode-languageclient/lib/common/${file}.js`);
  }
});
