/** The words that the script says, in the guide's language. */

export interface Words {
  readonly inside: string;
  readonly outside: string;
  readonly noNumber: string;
  readonly result: string;
  readonly set: string;
  readonly spread: string;
  readonly total: string;
  readonly missing: string;
  readonly left: string;
  readonly tie: string;
}

/** Puts the values in for the signs `#`. */
export function filled(text: string, ...values: readonly (string | number)[]): string {
  let next = 0;
  return text.replace(/#/g, () => String(values[next++] ?? ""));
}
