/** The class letters of a line's designators. */
import { readDesignator } from "../../syntax/designators.ts";

/** Designators looked at; a line is of one kind, strays are few. */
const ENOUGH = 25;

/** The letters that most of the designators have: a capacitor may stray into a row of resistors. */
export function classLetters(names: readonly { readonly name: string }[]): string | undefined {
  const first = lettersOf(names[0]);
  const isUsual =
    names.length < 3 || (first === lettersOf(names[1]) && first === lettersOf(names[2]));
  if (isUsual) return first;
  const counts = new Map<string, number>();
  for (const one of names.slice(0, ENOUGH)) {
    const letters = lettersOf(one);
    if (letters !== undefined) counts.set(letters, (counts.get(letters) ?? 0) + 1);
  }
  let best = first;
  for (const [letters, count] of counts) {
    if (count > (counts.get(best ?? "") ?? 0)) best = letters;
  }
  return best;
}

function lettersOf(one: { readonly name: string } | undefined): string | undefined {
  return one && readDesignator(one.name)?.letters;
}

const PASSIVE = /^[RCL]$/i;

/** Whether parts with these letters are known by a value in ohms, farads or henries. */
export function isPassive(letters: string | undefined): boolean {
  return letters !== undefined && PASSIVE.test(letters);
}
