/**
 * Do-not-fit and optional marks, in the spellings people use and in whatever cell they stand.
 * `Optional` is the builder's choice and not do-not-fit. Common practice, en, de, fr, es, nl.
 */
import { remembered } from "../../quantity/remembered.ts";

/** Longer remarks are not read to their end. */
export const MAX_REMARK = 2_000;

/** Abbreviations that stand alone or beside a value: `10k DNP`. */
const SHORT = /(?<![\p{L}\d])D\.?N\.?[PFIMLS]\.?(?![\p{L}\d])/u;

const PHRASES = [
  "(?:do not|don['’]?t|dont) (?:place|populate|fit|install|mount|stuff|load|solder|assemble|use)",
  "not (?:to be )?(?:populated|fitted|placed|mounted|installed|stuffed|loaded|assembled)",
  "no[ -]?(?:stuff|pop|fit|load|mount|place|populate)",
  "un(?:populated|fitted|placed|stuffed)",
  "(?<!(?:can|may|might|could) be )(?:leave|left) (?:empty|out|open|unpopulated)",
  "nicht (?:best(?:ü|ue)ck(?:t|en)|montiert|montieren|einbauen|einl(?:ö|oe)ten|eingebaut)",
  "unbest(?:ü|ue)ckt",
  "entf(?:ä|ae)llt",
  "(?:leer|frei) lassen",
  "non (?:mont[ée]|c[âa]bl[ée]|[ée]quip[ée]|implant[ée]|install[ée]|peupl[ée]|soud[ée])e?s?",
  "ne pas (?:monter|c[âa]bler|souder|placer|installer|[ée]quiper|implanter|mettre)",
  "no (?:montar|colocar|poblar|instalar|soldar|poner|montad[oa]s?|poblad[oa]s?|colocad[oa]s?)",
  "sin (?:montar|poblar|colocar)",
  "niet (?:plaatsen|geplaatst|bestukken|bestukt|monteren|gemonteerd|solderen|gebruikt)",
  "onbestukt",
  "leeg laten",
].join("|");

/**
 * A phrase counts where the remark ends with it or begins a new clause behind it: "do not fit" and
 * "do not fit, see errata", but not "do not fit before the test" nor "do not place near R5".
 */
const SAID = new RegExp(
  `(?<!\\p{L})(?:${PHRASES})(?= (?:this|these|by default|on this board|yet)|\\s*(?:$|[.,;:!)\\]*/|–-]))`,
  "iu",
);

const WHOLE = new RegExp(`^(?:${SHORT.source}|${PHRASES})$`, "iu");

/** Words that say it when the cell holds nothing else. */
const ALONE =
  /^(?:empty|omit(?:ted)?|omitir|unused|not used|none|leer|entfall(?:en)?|vide|omis|vac[ií]o|leeg|weglaten|excluded(?: from (?:bom|board))?|no ?stuff|nopop|n\.? ?[pfmb]\.?|n\/[pfm]|n\.c\.)$/iu;
/** The above that elsewhere than in the value or quantity mean something harmless. */
const HARMLESS_ALONE =
  /^(?:none|n\/[pfm]|n\.? ?[pfmb]\.?|n\.c\.|vide|leer|unused|empty|vac[ií]o|leeg)$/iu;

const FIGURE = /\d/;

/** Whether the cell says nothing but that the part is left out. `decisive`: value and quantity. */
export function isLeftOutCell(text: string, decisive: boolean): boolean {
  // None of the words has a figure in it, as most cells have.
  if (text.length === 0 || text.length > 60 || FIGURE.test(text)) return false;
  const said = leftOutAlone(text);
  return said === "plainly" || (decisive && said === "perhaps");
}

/** `perhaps`: with words that mean something harmless in other cells than value and quantity. */
const leftOutAlone = remembered((text: string): "plainly" | "perhaps" | "no" => {
  const bare = text.replace(/^[\s*([<"'_~-]+|[\s*)\]>"'_~!.-]+$/gu, "");
  if (ALONE.test(bare)) return HARMLESS_ALONE.test(bare) ? "perhaps" : "plainly";
  return WHOLE.test(bare) ? "plainly" : "no";
});

/** Whether a text says somewhere that the part is left out. */
export function saysLeftOut(text: string): boolean {
  return text.length >= 3 && saysLeftOutSomewhere(text.slice(0, MAX_REMARK));
}

const saysLeftOutSomewhere = remembered((text: string) => SHORT.test(text) || SAID.test(text));

const OPTIONAL =
  /(?<!\p{L})(?<!(?:not|non|nicht|no es|niet|pas)[ -])(?:optional|optionals|optionnel(?:le)?s?|facultati(?:f|ve)s?|opcional(?:es)?|opc\.|optioneel|optionele|wahlweise|opt\.)(?!\p{L})/iu;

/** The same in more words. */
const MAY_BE_LEFT_OUT =
  /(?<!\p{L})(?:(?:can|may|might|could) be (?:left (?:out|empty|open|unpopulated)|omitted|skipped)|kann (?:entfallen|weggelassen werden)|peut [êe]tre omise?|puede omitirse|kan (?:vervallen|weggelaten worden))(?!\p{L})/iu;

/** Whether a text says that the builder may leave the part out. */
export function saysOptional(text: string): boolean {
  return text.length > 3 && saysOptionalSomewhere(text.slice(0, MAX_REMARK));
}

const saysOptionalSomewhere = remembered(
  (text: string) => OPTIONAL.test(text) || MAY_BE_LEFT_OUT.test(text),
);

const NO = /^(?:0|no|n|nein|non|nee|false|falsch|faux|falso|onwaar|f|-|–|—|✗|✘|off|none|aus)$/iu;
const YES = /^(?:1|x|yes|y|ja|j|oui|o|s[ií]|true|wahr|vrai|verdadero|waar|t|✓|✔|☑|on|ok)$/iu;

/** What a yes-or-no cell says; undefined when it is empty or says something else. */
export function readYesNo(text: string): boolean | undefined {
  if (NO.test(text)) return false;
  return YES.test(text) ? true : undefined;
}

/** A text in stars in place of a value, such as `*RST*`: no value, hence no part to fit. */
const STARRED = /^\*+[^*\d]{1,12}\*+$/u;
/** Parts whose value is found on test have none in the list either, but are fitted. */
const ON_TEST = /^\*+ ?(?:sot|aot|sit|select(?:ed)?|trim|adjust|see|note|abgleich)\b/iu;

/** Whether a resistor, capacitor or coil has a starred word where its value belongs. */
export function isStarredOut(value: string): boolean {
  return STARRED.test(value) && !ON_TEST.test(value);
}
