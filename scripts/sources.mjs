// The TypeScript sources below folders, as paths from the root folder, in order.
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "./run.mjs";

/** @param {readonly string[]} folders */
export function sourcesOf(folders) {
  return folders.flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true })
      .filter((name) => /\.ts$/.test(name) && !name.endsWith(".d.ts"))
      .map((name) => `${folder}/${name.replaceAll("\\", "/")}`)
      .sort(),
  );
}
