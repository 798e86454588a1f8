/** Which marks account for a part: after one of them the part is no longer missing. */
import type { Role } from "../syntax/dialect.ts";
import type { Use } from "./guide.ts";
import type { Part } from "./parts.ts";

/** Roles that put a part in place for good, or say that its place stays empty. */
export const ACCOUNTING: ReadonlySet<Role> = new Set<Role>(["fit", "insert", "bridge", "empty"]);

/** Whether the use settles where the part ends up; a choice settles it for all its members. */
export function accountsFor(use: Use): boolean {
  return ACCOUNTING.has(use.role);
}

/** Whether the list supplies the part for fitting and none of its uses settles where it ends up. */
export function isMissing(part: Part, uses: readonly Use[]): boolean {
  return part.fitted && !part.optional && !uses.some(accountsFor);
}

/** Whether the part is listed for fitting and one plain mark, or none yet, fits it. */
export function isOrdinary(part: Part, uses: readonly Use[]): boolean {
  if (uses.length === 0) return true;
  if (uses.length > 1 || !part.fitted) return false;
  const [use] = uses;
  return use!.role === "fit" && use!.item.kind !== "choice";
}
