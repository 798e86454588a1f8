/** Readings as people type them, made whole numbers so that sums and ties are exact. */

const NUMBER = /^([+-]?)(\d*)(?:[.,](\d*))?$/;

/** A decimal number with point or comma; undefined for anything else. */
export function readDecimal(text: string): number | undefined {
  const plain = text
    .trim()
    .replace(/\u2212/g, "-")
    .replace(/[\u00a0\u202f ]/g, "");
  const match = NUMBER.exec(plain);
  if (!match || (match[2] === "" && !match[3])) return undefined;
  return Number(`${match[1]}${match[2] || "0"}.${match[3] || "0"}`);
}

/** The number of digits behind the point that the text has. */
function decimals(text: string): number {
  return /[.,](\d*)/.exec(text)?.[1]?.length ?? 0;
}

export interface WholeReadings {
  /** Each reading in units of its last digit. */
  readonly whole: readonly number[];
  /** A sum of them as a number of the readings' own unit. */
  inUnits(whole: number): number;
  /** Digits behind the point. */
  readonly places: number;
}

/** Texts that `readDecimal` reads, in one common last digit. */
export function wholeReadings(texts: readonly string[]): WholeReadings {
  const places = Math.min(12, Math.max(0, ...texts.map(decimals)));
  const whole = texts.map((text) => Math.round(readDecimal(text)! * 10 ** places));
  return { whole, places, inUnits: (sum) => Number(`${sum}e-${places}`) };
}
