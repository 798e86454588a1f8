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
  const largest = texts.reduce((most, text) => Math.max(most, Math.abs(readDecimal(text)!)), 0);
  let places = texts.reduce((most, text) => Math.max(most, decimals(text)), 0);
  // Beyond so many digits whole numbers are not exact either.
  while (places > 0 && largest * 10 ** places > Number.MAX_SAFE_INTEGER) places--;
  const whole = texts.map((text) => Math.round(readDecimal(text)! * 10 ** places));
  return { whole, places, inUnits: (sum) => Number(`${sum}e-${places}`) };
}
export interface ReadingText {
  /** Plain decimal figures with a point. */
  readonly figures: string;
  /** As written; empty for none. */
  readonly unit: string;
}

const WITH_UNIT =
  /^([^\p{L}%°Ωµ]*(?:\d[eE][+\-\u2212]?\d{1,3}(?![\d.,]))?)\s*([\p{L}%°Ωµ][^\d]{0,9})?$/u;

/** A reading with or without a unit behind it: `0,6012`, `601.2 mV`, `6.012E-1`. */
export function readReading(text: string): ReadingText | undefined {
  const match = text.length > 60 ? undefined : WITH_UNIT.exec(text.trim());
  // A lone `e` is what is left of a power of ten.
  if (!match || /^e$/i.test(match[2]?.trim() ?? "")) return undefined;
  const [number = "", power = "0"] = match[1]!.trim().split(/[eE]/);
  const value = readDecimal(number);
  if (value === undefined) return undefined;
  const figures = shifted(plainFigures(number), Number(power.replace("\u2212", "-")));
  return { figures, unit: match[2]?.trim() ?? "" };
}

/** The unit that a column's header names: `Vbe (mV)`, `f [Hz]`, `Vgs / V`, `Ugs in V`. */
export function unitInHeader(header: string): string {
  const match = /[([]\s*([^()[\]]{1,10}?)\s*[)\]]\s*$|(?:\/|\s(?:in|en))\s*(\S{1,10})$/u.exec(
    header.slice(-60),
  );
  const unit = match?.[1] ?? match?.[2] ?? "";
  return /^\p{L}|^[%°Ωµ]/u.test(unit) ? unit : "";
}

function plainFigures(text: string): string {
  const plain = text
    .replace(/[\s\u00a0\u202f+]/g, "")
    .replace("\u2212", "-")
    .replace(",", ".");
  return plain;
}

/** The figures times a power of ten, without rounding. */
function shifted(figures: string, power: number): string {
  if (power === 0) return figures;
  const sign = figures.startsWith("-") ? "-" : "";
  const [whole = "", part = ""] = figures.replace("-", "").split(".");
  const digits = whole + part;
  const point = whole.length + power;
  if (point <= 0) return `${sign}0.${"0".repeat(-point)}${digits}`;
  const padded = digits.padEnd(point, "0");
  const rest = padded.slice(point);
  return `${sign}${padded.slice(0, point)}${rest ? `.${rest}` : ""}`;
}
