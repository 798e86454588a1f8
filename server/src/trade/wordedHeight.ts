/**
 * Body heights that someone has written into a remark of the parts list: `11 mm high`, `H=11mm`,
 * `Bauhöhe 11,5 mm`, `lies flat, 3 mm`. Only forms that can mean nothing else are read: lengths of
 * screws, lead spacings, diameters and cables are given without a word for height.
 */
import { remembered } from "../quantity/remembered.ts";

export interface WordedHeight {
  readonly mm: number;
  /** The words that tell. */
  readonly words: string;
}

/**
 * The height in mm that the words of a line tell, for an upper limit or a range the upper end, in
 * English, German, French, Dutch or Spanish. Undefined where they tell none or several that differ.
 */
export function wordedHeight(texts: readonly string[]): WordedHeight | undefined {
  // Most lines of a list speak of no length, and lists may have 200,000.
  const found = texts.flatMap((text) => (/mm/i.test(text) ? heightsIn(text) : []));
  const [first] = found;
  return found.every(({ mm }) => mm === first?.mm) ? first : undefined;
}

/** Longer texts are read no further. */
const MAX_TEXT = 300;

const heightsIn = remembered((whole: string): readonly WordedHeight[] => {
  const text = whole.slice(0, MAX_TEXT).replace(/\s+/g, " ");
  return FORMS.flatMap(({ form, most }) =>
    [...text.matchAll(form)].flatMap((match) => {
      const mm = Number(match[1]!.replace(",", "."));
      const isOwn = !OF_ANOTHER.test(clauseBefore(text, match.index));
      return isOwn && mm > 0 && mm < most ? [{ mm, words: match[0].trim() }] : [];
    }),
  );
});

/** A remark after a full stop or semicolon speaks of something new. */
function clauseBefore(text: string, end: number): string {
  const start = Math.max(text.lastIndexOf(";", end - 1), text.lastIndexOf(". ", end - 1)) + 1;
  return text.slice(start, end);
}

/** `with heat sink, 25 mm high`, `at a height of 15 mm`, `digit height 14 mm`: not of the body itself. */
const OF_ANOTHER = new RegExp(
  `(?<!\\p{L})(?:${[
    "with|on|onto|in|under|above|at|from|for|without",
    "mit|auf|im|unter|über|an|für|ohne",
    "avec|sur|sous|dans|à|pour|sans",
    "con|sobre|bajo|en|para|sin",
    "met|op|onder|boven|voor|zonder",
    "digit|character|letter|text|stacking|stacked|mated|mating|pin|tail|lead|thread|screw|head|knob|shaft|spacer|stand-?off|mounting|clearance|free",
  ].join("|")})(?!\\p{L})`,
  "iu",
);

const NUMBER = String.raw`(?<![\d.,±/])(?<!(?:±|\+\/?-) )(\d{1,3}(?:[.,]\d{1,2})?)`;
/** The word that follows would be what is high: `25 mm high heat sink`. */
const END = String.raw`(?= ?(?:$|[,;.:)\]/|–]| - |max\b|and\b|und\b|et\b|y\b|en\b))`;
const BEFORE = String.raw`(?<![\p{L}\p{N}_-])`;
const LIMIT = String.raw`(?:\(?(?:max|máx|maximum|of|de|ca|approx|about|env)\b\.?\)? ?){0,2}`;
const TOLERANCE = String.raw`(?: ?(?:±|\+\/?-) ?\d{1,2}(?:[.,]\d{1,2})?)?`;

/** A lying part that is higher is rare, and figures from 5 mm on are lead spacings as well. */
const MOST_LYING = 5;
const MOST = 150;

const FORMS: readonly { readonly form: RegExp; readonly most: number }[] = [
  {
    form: new RegExp(
      `${NUMBER}${TOLERANCE} ?mm (?:max\\.? )?(?:high|tall|in height|hoch|de haut(?:eur)?|de alto|de altura|hoog)${END}`,
      "giu",
    ),
    most: MOST,
  },
  {
    form: new RegExp(
      `${BEFORE}(?:(?:body |seated |overall )?height|(?:bau|bauteil|gesamt|gehäuse)?(?:höhe|hoehe)|hauteur|altura|(?:bouw)?hoogte|h)(?: ?[:=]| ?max(?:\\.|imum)?)? ?${LIMIT}(?:\\d{1,3} ?[–-] ?)?${NUMBER}${TOLERANCE} ?mm(?![\\p{L}\\p{N}])`,
      "giu",
    ),
    most: MOST,
  },
  {
    form: new RegExp(
      `${BEFORE}(?:(?:lies|lying|laid) flat|(?:liegt flach|flach liegend|liegend)|couchée?|tumbad[oa]|(?:plat )?liggend),? ${NUMBER} ?mm${END}`,
      "giu",
    ),
    most: MOST_LYING,
  },
];
