/** Words that may rightly stand twice in a row, by language. */
import type { Language } from "../../text/language.ts";

const list = (words: string): ReadonlySet<string> => new Set(words.split(" "));

/** Grammar doubles them: "that that", „die die“, « nous nous ». */
export const DOUBLED: Readonly<Record<Language, ReadonlySet<string>>> = {
  en: list("that had is do so no very bye"),
  de: list("die der das den dem des sie ihr sich so sehr was wer"),
  fr: list("nous vous faire si très"),
  nl: list("die dat haar zij ze er heel zo"),
  es: list("se no muy así que"),
};

/** Rings of resistors may be alike: "brown black black gold". */
export const COLOURS: Readonly<Record<Language, ReadonlySet<string>>> = {
  en: list(
    "black brown red orange yellow green blue violet purple grey gray white gold silver pink",
  ),
  de: list("schwarz braun rot orange gelb grün blau violett lila grau weiß weiss gold silber rosa"),
  fr: list(
    "noir marron brun rouge orange jaune vert bleu violet gris blanc or doré argent argenté",
  ),
  nl: list("zwart bruin rood oranje geel groen blauw violet paars grijs wit goud zilver roze"),
  es: list(
    "negro marrón café rojo naranja amarillo verde azul violeta morado gris blanco oro dorado plata plateado",
  ),
};
