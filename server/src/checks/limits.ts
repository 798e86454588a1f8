/** The limits of checks that have one. */
import type { Guide } from "../model/guide.ts";
import type { CheckMeta } from "./check.ts";

/** The limit that holds in the guide: its own, else that of the settings, else the check's. */
export function limitOf({ code, limit }: CheckMeta, guide: Guide): number {
  const own = guide.frontMatter.limits.find(({ name }) => name === code);
  return own?.value ?? guide.settings.limits[code] ?? limit!.default;
}
