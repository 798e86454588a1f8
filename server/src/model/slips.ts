/** Names one slip of the pen away: a character changed, left out, doubled in, or two swapped. */

const DIGITS = "0123456789";
const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

/**
 * All texts one slip away from an upper-case name, likeliest slips first: swapped characters, then
 * changed, missing and extra ones. Digits slip to digits, letters to letters.
 */
export function* slips(name: string): Generator<string, void, void> {
  for (let i = name.length - 1; i > 0; i--) {
    const [a, b] = [name[i - 1]!, name[i]!];
    if (a !== b && isDigit(a) === isDigit(b))
      yield name.slice(0, i - 1) + b + a + name.slice(i + 1);
  }
  for (let i = name.length - 1; i >= 0; i--) {
    for (const other of isDigit(name[i]!) ? DIGITS : LETTERS) {
      if (other !== name[i]) yield name.slice(0, i) + other + name.slice(i + 1);
    }
  }
  for (let i = name.length; i > 0; i--) {
    for (const extra of DIGITS) yield name.slice(0, i) + extra + name.slice(i);
    if (!isDigit(name[i - 1]!)) {
      for (const extra of LETTERS) yield name.slice(0, i) + extra + name.slice(i);
    }
  }
  if (name.length > 2) {
    for (let i = name.length - 1; i >= 0; i--) yield name.slice(0, i) + name.slice(i + 1);
  }
}

function isDigit(character: string): boolean {
  return character >= "0" && character <= "9";
}
