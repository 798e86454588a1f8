/** Reads quantity and length cells: `4`, `4 pcs`, `1.2 m`, `-`. */
import { remembered } from "../../quantity/remembered.ts";

/** A quantity cell: pieces, a length, nothing said, or something that is no number. */
export type Amount =
  | { readonly kind: "pieces"; readonly count: number; readonly spare?: number }
  | { readonly kind: "length"; readonly metres: number }
  | { readonly kind: "none" }
  | { readonly kind: "unread" };

const METRES: { readonly [unit in string]?: number } = {
  m: 1,
  meter: 1,
  metre: 1,
  dm: 0.1,
  cm: 0.01,
  mm: 0.001,
  in: 0.0254,
  inch: 0.0254,
  '"': 0.0254,
  "''": 0.0254,
  "”": 0.0254,
  ft: 0.3048,
  foot: 0.3048,
  feet: 0.3048,
  "'": 0.3048,
  yd: 0.9144,
  zoll: 0.0254,
  mtr: 1,
};

const NUMBER = "(\\d{1,9}(?:[.,]\\d{1,4})?)";
const LENGTH = new RegExp(
  `^${NUMBER}\\s*(mm|cm|dm|mtr|met(?:er|re)s?|m|inch(?:es)?|in|zoll|feet|foot|ft|yd|''|["”'])\\.?$`,
  "iu",
);
const PIECES = new RegExp(
  `^[x×]?\\s*${NUMBER}\\s*(?:[x×]|pcs?|pieces?|pce|ea|each|off|units?|st(?:ü|ue)?c?k|stk|st|pi[eè]ces?|pi?eza?s?|pza?s?|uds?|unidad(?:es)?|stuks?|pairs?|sets?)?\\.?$`,
  "iu",
);
/** `4 + 1`: four and one to spare. */
const WITH_SPARE = /^(\d{1,6})\s*\+\s*(\d{1,6})(?:\s*\(?(?:spares?|reserve|ersatz|extra)\)?)?$/iu;
/** One or a thousand, as the country has it. */
const GROUPED = /^[1-9]\d{0,2}[.,]\d{3}$/;
/** What people write where a number makes no sense or does not matter. */
const NOTHING =
  /^(?:[-–—~?./*]+|n\.?\/?a\.?|tbd|a\/r|as (?:needed|required)|some|any|various|nach bedarf|div\.?|diverse|selon besoin|según necesidad|naar behoefte|see notes?)$/iu;

/** What a quantity cell says. */
export function readAmount(text: string): Amount {
  if (text === "") return NONE;
  return text.length > 60 ? UNREAD : amountOnce(text);
}

const NONE: Amount = { kind: "none" };
const UNREAD: Amount = { kind: "unread" };

const amountOnce = remembered((text: string): Amount => {
  if (NOTHING.test(text)) return NONE;
  const spare = WITH_SPARE.exec(text);
  if (spare) {
    const extra = Number(spare[2]);
    return { kind: "pieces", count: Number(spare[1]) + extra, spare: extra };
  }
  const pieces = PIECES.exec(text);
  if (pieces && !GROUPED.test(pieces[1]!)) {
    const count = number(pieces[1]!);
    if (Number.isInteger(count)) return { kind: "pieces", count };
    return UNREAD;
  }
  const metres = readMetres(text);
  return metres === undefined ? UNREAD : { kind: "length", metres };
});

/** A length in metres: `820 mm`, `1,2 m`, `3 ft`. */
function readMetres(text: string): number | undefined {
  const match = LENGTH.exec(text);
  if (!match) return undefined;
  const unit = match[2]!.toLowerCase().replace(/^(met(?:er|re)|inch)e?s$/, "$1");
  const factor = METRES[unit];
  return factor === undefined ? undefined : round(number(match[1]!) * factor);
}

/** A body height in mm; a bare number is in the unit that the column's name gives, else mm. */
export function readHeight(text: string, unit = "mm"): number | undefined {
  if (text === "") return undefined;
  const mil = /^(\d{1,6}(?:[.,]\d{1,4})?)\s*(?:mils?|thou)$/iu.exec(text);
  if (mil) return round(number(mil[1]!) * 0.0254);
  if (/^\d{1,6}(?:[.,]\d{1,4})?$/.test(text)) {
    return unit === "" ? undefined : readHeight(`${text} ${unit}`, "");
  }
  const metres = readMetres(text);
  return metres === undefined ? undefined : round(metres * 1000);
}

function number(text: string): number {
  return Number(text.replace(",", "."));
}

/** Without the noise of binary fractions. */
function round(value: number): number {
  return Number(value.toPrecision(10));
}
