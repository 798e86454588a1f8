/** Counts pieces of hardware through the guide: used up, lent to a trial, taken back. */
import type { Use } from "../model/guide.ts";

export interface Tally {
  /** Pieces out of the bag when the guide ends. */
  readonly used: number;
  /** Most pieces that are out of it at one time: trials may need more than is used in the end. */
  readonly most: number;
  /** The use with which more pieces were out than supplied. */
  readonly over: Use | undefined;
  /** Pieces out of the bag at that use. */
  readonly out: number;
  /** Trials and placings whose pieces were neither taken back nor fitted afterwards. */
  readonly open: readonly Use[];
}

interface Loan {
  readonly use: Use;
  left: number;
}

/**
 * Follows the uses of one line, in document order. Pieces of `try` and `place` are out until
 * `remove`; a plain mark takes those that are never removed before it takes new ones.
 * Materials named in a `make` mark count where no other mark uses the line up.
 */
export function tally(uses: readonly Use[], supplied: number): Tally {
  const taken = takenBack(uses);
  const making = !uses.some((use) => use.role === "fit" || use.role === "insert");
  const open: Loan[] = [];
  let fitted = 0;
  let borrowed = 0;
  let over: Use | undefined;
  let out = 0;
  let most = 0;
  for (const use of uses) {
    const count = use.count ?? 0;
    const back = taken.get(use) ?? 0;
    switch (use.role) {
      case "try":
      case "place":
        borrowed += back;
        open.push({ use, left: count - back });
        break;
      case "remove":
        borrowed -= back;
        fitted = Math.max(0, fitted - (count - back));
        break;
      case "fit":
      case "insert":
      case "empty":
        fitted += count;
        settle(open, count);
        break;
      case "make":
        if (making) fitted += count;
        break;
      default:
        continue;
    }
    const now = fitted + borrowed + lent(open);
    most = Math.max(most, now);
    if (now > supplied && !over) {
      over = use;
      out = now;
    }
  }
  const left = open.filter((loan) => loan.left > 0);
  return { used: fitted + lent(left), most, over, out, open: left.map((loan) => loan.use) };
}

/** How many pieces each `remove` gives back from trials before it, and each trial gets back. */
function takenBack(uses: readonly Use[]): ReadonlyMap<Use, number> {
  const back = new Map<Use, number>();
  const loans: Loan[] = [];
  for (const use of uses) {
    const count = use.count ?? 0;
    if (use.role === "try" || use.role === "place") loans.push({ use, left: count });
    if (use.role !== "remove") continue;
    let wanted = count;
    for (const loan of [...loans].reverse()) {
      const n = Math.min(wanted, loan.left);
      if (n === 0) continue;
      loan.left -= n;
      wanted -= n;
      back.set(loan.use, (back.get(loan.use) ?? 0) + n);
    }
    back.set(use, count - wanted);
  }
  return back;
}

function settle(open: Loan[], count: number): void {
  let wanted = count;
  for (const loan of open) {
    const n = Math.min(wanted, loan.left);
    loan.left -= n;
    wanted -= n;
  }
}

function lent(loans: readonly Loan[]): number {
  return loans.reduce((sum, loan) => sum + loan.left, 0);
}
