/**
 * Letter-and-digit codes of values after IEC 60062:2016 (4k7, R47, 4n7) and the three-figure marks
 * on capacitors (104).
 */
import { decimal, isDoubtfulGroup } from "./numbers.ts";
import { toleranceOfLetter } from "./tolerance.ts";
import { readUnit } from "./units.ts";
import type { Quantity, Unit } from "./value.ts";
import type { ValueClass } from "./valueClass.ts";

/** One value word understood. */
export interface WordReading {
  readonly quantity: Quantity;
  /** How sure the unit is: written out, given by the code's letter, or only by the class. */
  readonly by: "unit" | "code" | "class";
  readonly tolerance?: string | undefined;
  /** Letters at the end that belong to something else, such as a potentiometer's taper. */
  readonly unread: number;
}

const NUMBER = String.raw`((?:\d{1,3}(?:'\d{3}){1,2}|\d{1,9})(?:[.,_]\d{1,8})?|\.\d{1,8})`;
const PLAIN = new RegExp(`^\\+?${NUMBER}([^\\d.,']{0,12})$`);
const LETTER_FOR_POINT = /^(\d{0,4})([a-zA-ZΩ])(\d{1,4})([a-zA-ZΩ]{0,4})$/;
const MARK = /^([1-9]\d)(\d)([BCDFGJKMZ]?)$/;

/**
 * Reads one word (µ folded to `u`, ohm signs to `Ω`, thin spaces in figures to `'`) as a value of a
 * part of that class. Gives undefined when it is none or may be meant in two ways.
 */
export function readWord(word: string, kind: ValueClass): WordReading | undefined {
  return readMark(word, kind) ?? readPlain(word, kind) ?? readPointCode(word, kind);
}

/** `104` is 10 × 10⁴ pF; `229` 22 × 0.1 pF (figures 8 and 9 from memory of EIA-198). */
function readMark(word: string, kind: ValueClass): WordReading | undefined {
  const match = kind.code === "F" ? MARK.exec(word) : null;
  if (!match) return undefined;
  const [, figures, third, letter] = match;
  // Without a letter 220 may be the mark for 22 pF or plain 220 pF; 100F is a hundred farad.
  if (third === "0" && (letter === "" || letter === "F")) return undefined;
  const power = third === "8" ? -2 : third === "9" ? -1 : Number(third);
  const amount = Number(`${figures}e${power - 12}`);
  const tolerance = toleranceOfLetter(letter!, amount);
  const quantity: Quantity = { amount, unit: "F" };
  return { quantity, by: letter ? "code" : "class", unread: 0, ...(tolerance && { tolerance }) };
}

/** A number with a unit, a bare prefix or nothing behind it. */
function readPlain(word: string, kind: ValueClass): WordReading | undefined {
  const match = PLAIN.exec(word);
  if (!match) return undefined;
  const digits = match[1]!.replaceAll("'", "");
  const tail = readTail(match[2]!, kind);
  if (!tail) return undefined;
  // 32_768kHz is how file and net names avoid the point.
  if (digits.includes("_") && tail.unit !== "Hz") return undefined;
  // Three decimals are usual in 14.318 MHz and 2.500 V, and doubtful in 2,200 µF.
  const doubtful = isDoubtfulGroup(digits) && ["Ω", "F", "H"].includes(tail.unit);
  const amount = doubtful ? undefined : decimal(digits, tail.exponent);
  if (amount === undefined) return undefined;
  const tolerance = tail.isOther
    ? undefined
    : toleranceOfLetter(tail.letter ?? "", farads(amount, tail.unit));
  return {
    quantity: { amount, unit: tail.unit },
    by: tail.by,
    unread: tail.letter && !tolerance ? tail.letter.length : 0,
    ...(tolerance && { tolerance }),
  };
}

interface Tail {
  readonly unit: Unit;
  readonly exponent: number;
  readonly by: WordReading["by"];
  /** A tolerance letter, the taper of a potentiometer, or the speed of a fuse. */
  readonly letter?: string;
  /** The letter is no tolerance. */
  readonly isOther?: boolean;
}

function readTail(tail: string, kind: ValueClass): Tail | undefined {
  if (tail === "") return kind.bare && { unit: kind.bare, exponent: 0, by: "class" };
  const code = readCodeLetter(tail, kind);
  if (code) return { ...code, by: "code" };
  const ofResistor = kind.code === "Ω" && RESISTOR_TAIL.exec(tail);
  if (ofResistor) {
    const letter = ofResistor[2] ?? ofResistor[3]!;
    const prefix = readCodeLetter(ofResistor[1]!, kind)!;
    return { ...prefix, by: "code", letter, isOther: !ofResistor[2] };
  }
  const ofFuse = kind.units[0] === "A" && FUSE_TAIL.exec(tail);
  if (ofFuse) {
    return { ...readUnit(ofFuse[1]!)!, by: "unit", letter: ofFuse[2]!, isOther: true };
  }
  const unit = readUnit(tail);
  if (unit) return { ...unit, by: "unit" };
  const other = OTHER_TAIL.exec(tail);
  const prefix = other && kind.code && readCodeLetter(other[1]!, kind);
  return prefix ? { ...prefix, by: "code", letter: other[2]! } : undefined;
}

/**
 * `27KK` has a tolerance behind its prefix, `10kB` the taper of a potentiometer or ±0.1 %: which,
 * cannot be told, so B, C and D are left unread there.
 */
const RESISTOR_TAIL = /^([rRkKMG])(?:([FGJKM])|([A-DW]))$/;
/** `500mAT` is slow; the letters of IEC 60127 stand before or behind the current. */
const FUSE_TAIL = /^(m?A)(TT|FF|[TFM])$/;
const OTHER_TAIL = /^([pnuPNUm])([BCDGJKMZ])$/;

/** `4k7`, `R47`, `1R8J`, `4n7F`, and the same habit with other units: `5V1`, `0W25`, `3A15`. */
function readPointCode(word: string, kind: ValueClass): WordReading | undefined {
  const match = LETTER_FOR_POINT.exec(word);
  if (!match) return undefined;
  const [, whole, letter, part, tail] = match as unknown as [
    string,
    string,
    string,
    string,
    string,
  ];
  const unit = readRatingPoint(letter, kind) ?? readCodeLetter(letter, kind, true);
  if (!unit || (whole === "" && !isLeadingLetter(unit.unit, part, kind))) return undefined;
  const amount = decimal(`${whole || "0"}.${part}`, unit.exponent);
  if (amount === undefined) return undefined;
  const quantity: Quantity = { amount, unit: unit.unit };
  const spelledOut = tail !== "" && readUnit(tail);
  if (spelledOut && spelledOut.exponent === 0 && spelledOut.unit === unit.unit) {
    return { quantity, by: "unit", unread: 0 };
  }
  const tolerance = toleranceOfLetter(tail, farads(amount, unit.unit));
  if (tail !== "" && !(kind.code && tolerance)) return undefined;
  return { quantity, by: "code", unread: 0, ...(tolerance && { tolerance }) };
}

/** R47 and R047 are resistors; R0603 is a package, and with no class known R47 a designator. */
function isLeadingLetter(unit: Unit, part: string, kind: ValueClass): boolean {
  return unit === kind.code && part.length <= 3;
}

function readRatingPoint(letter: string, kind: ValueClass) {
  if (letter === "v" || letter === "V") return { unit: "V", exponent: 0 } as const;
  if (letter === "W") return { unit: "W", exponent: 0 } as const;
  if (letter === "A" && kind.units[0] === "A") return { unit: "A", exponent: 0 } as const;
  return undefined;
}

type Letters = { readonly [letter: string]: number };

/** Where nothing is known of the class only the usual spelling counts: `2N3904` is no 2.39 nF. */
const USUAL_OHM: Letters = { R: 0, k: 3, K: 3, M: 6 };
const USUAL_FARAD: Letters = { p: -12, n: -9, u: -6 };

const CODE_LETTERS: { readonly [unit in Unit]?: Letters } = {
  // `m` is left out: people write it for milliohm and for megohm.
  Ω: { R: 0, r: 0, Ω: 0, k: 3, K: 3, M: 6, G: 9, T: 12 },
  F: { p: -12, P: -12, n: -9, N: -9, u: -6, U: -6, m: -3, F: 0 },
  H: { n: -9, N: -9, u: -6, U: -6, m: -3 },
  Hz: { k: 3, K: 3, M: 6 },
};

function readCodeLetter(letter: string, kind: ValueClass, forPoint = false) {
  if (!kind.code) {
    if (kind.typed || kind.units.length === 1) return undefined;
    const ohm = USUAL_OHM[letter];
    if (ohm !== undefined) return { unit: "Ω", exponent: ohm } as const;
    const farad = USUAL_FARAD[letter];
    return farad === undefined ? undefined : ({ unit: "F", exponent: farad } as const);
  }
  // 4R7 on an inductor is 4.7 µH: not in the standard but in use.
  if (kind.code === "H" && letter === "R" && forPoint) return { unit: "H", exponent: -6 } as const;
  // Behind the number these are read as unit symbols.
  if (!forPoint && (letter === "F" || letter === "Ω")) return undefined;
  // Some write 470E for 470R. As the point it would be a power of ten: 4E7.
  if (kind.code === "Ω" && letter === "E" && !forPoint) return { unit: "Ω", exponent: 0 } as const;
  const exponent = CODE_LETTERS[kind.code]?.[letter];
  return exponent === undefined ? undefined : { unit: kind.code, exponent };
}

function farads(amount: number, unit: Unit): number | undefined {
  return unit === "F" ? amount : undefined;
}
