/** What the marks of one part add up to: what it was put through, and what was left undone. */
import type { Use } from "../model/guide.ts";
import type { Role } from "../syntax/dialect.ts";

/** Roles after which the part is in place. */
const FITTING: ReadonlySet<Role> = new Set<Role>(["fit", "insert"]);
/** Roles that end a wait: the part is in place, or its place stays empty. */
const SETTLING: ReadonlySet<Role> = new Set<Role>(["fit", "insert", "bridge", "empty"]);

/** Whether the use puts just this part in place; of a choice the builder takes only one. */
export function isFitting(use: Use): boolean {
  return FITTING.has(use.role) && use.item.kind !== "choice";
}

export interface OpenEnds {
  /** Put aside (`later`) or placed unsoldered (`place`), and not fitted since. */
  readonly held: Use | undefined;
  /** Placed for trial (`try`), and neither removed nor fitted since. */
  readonly tried: Use | undefined;
}

/** What is still open after all uses of a part, which come in document order. */
export function openEnds(uses: readonly Use[]): OpenEnds {
  let held: Use | undefined;
  let tried: Use | undefined;
  for (const use of uses) {
    if (SETTLING.has(use.role)) {
      held = undefined;
      tried = undefined;
    } else if (use.item.kind === "choice") {
      // The builder does this to one of several parts: nothing must follow for each.
    } else if (use.role === "later" || use.role === "place") {
      held = use;
      tried = undefined;
    } else if (use.role === "try") {
      tried = use;
    } else if (use.role === "remove") {
      tried = undefined;
      if (held?.role === "place") held = undefined;
    }
  }
  return { held, tried };
}

/** The first use with one of the roles. */
export function firstWith(uses: readonly Use[], ...roles: Role[]): Use | undefined {
  return uses.find((use) => roles.includes(use.role) && use.item.kind !== "choice");
}

/** Whether `a` comes in a step before that of `b`; within one step the builder sees both. */
export function inEarlierStep(a: Use, b: Use, compare: (a: Use, b: Use) => number): boolean {
  return a.step !== b.step && compare(a, b) < 0;
}
