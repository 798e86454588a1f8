/** What a line of hardware is, by its words in English, German, French, Dutch and Spanish. */
import { propertyClassIn } from "./strength.ts";
import { type Thread, threadIn } from "./threads.ts";

export type FastenerKind =
  | "screw"
  | "nut"
  | "washer"
  | "standoff"
  | "bush"
  | "insulator"
  | "insert";

export interface Fastener {
  readonly kind: FastenerKind;
  readonly thread: Thread | undefined;
  /** Length below the head of a screw, or length of a standoff, in m. */
  readonly length?: number;
  readonly propertyClass?: string;
  /** Screws whose strength no table here has: plastic, brass, self-tapping. */
  readonly soft: boolean;
  /** Countersunk screws are measured over their head. */
  readonly countersunk: boolean;
  readonly head: "hexagon socket" | "other";
}

/** In this order: a nut with a washer on it is a nut, a bush for a screw a bush. */
const KINDS: readonly (readonly [FastenerKind, RegExp])[] = [
  [
    "insulator",
    /\bmica\b|insulator|insulating (?:pad|foil|sheet|washer)|thermal pad|silicone pad|glimmer|isolierscheibe|isolierfolie|wärmeleitpad|isolant|isolateur|isolatie(?:plaat|folie)|warmtegeleid|aislante|aislador/iu,
  ],
  [
    "bush",
    /\bbush(?:es|ing|ings)?\b|shoulder washer|isolierbuchse|isoliernippel|\bnippel\b|canon isolant|douille|isolatiebus|\bbusje|casquillo/iu,
  ],
  ["insert", /\binserts?\b|einpressmutter|gewindeeinsatz|insert fileté|inserto/iu],
  [
    "standoff",
    /stand-?off|spacer|pillar|abstands(?:bolzen|hülse)|distanz|entretoise|colonnette|afstands(?:bus|houder)|separador/iu,
  ],
  [
    "washer",
    /washer|unterlegscheibe|\bscheiben?\b|federring|fächerscheibe|rondelle|sluitring|ring\b|arandela/iu,
  ],
  ["nut", /\bnuts?\b|\bmuttern?\b|stoppmutter|écrous?|\bmoer(?:en)?\b|tuerca/iu],
  [
    "screw",
    /\bscrews?\b|\bbolts?\b|schrauben?\b|\bvis\b|\bboulons?\b|schroe(?:f|ven)|\bbout(?:en)?\b|tornillos?|pernos?/iu,
  ],
];

const NO_METAL = /nylon|polyamid|plastic|kunststoff|plastique|plástic|\bpa ?6|\bpeek\b/iu;
const SOFT =
  /brass|messing|laiton|latón|alumin|self-?tapping|blechschraube|tôle|plaatschroef|autorroscante|wood ?screw/iu;
const COUNTERSUNK =
  /countersunk|counter-?sunk|flat head|senk(?:kopf|schraube)|tête fraisée|verzonken|avellanada|iso ?(?:10642|7046|2009)|din ?(?:963|965|7991)/iu;

const HEXAGON_SOCKET =
  /socket (?:head|cap)|hex(?:agon)?(?:al)? socket|allen|innensechskant|inbus|six pans creux|hexagone creux|binnenzeskant|cilindros? allen|hexágono interior|iso ?(?:4762|10642|7380)|din ?(?:912|7991)/iu;

/** `M3x10`, `M3 × 10 mm`, `4-40 x 1/4"` in inches. */
const LENGTH =
  /(?:M ?\d{1,2}(?:[.,]\d)?(?: ?[x×] ?0[.,]\d{1,2})?|#?\d{1,2}-\d{2}|1\/4-20) ?[x×*] ?(\d{1,3}(?:[.,]\d)?)(?:\/(\d{1,2}))?( ?(?:"|″|in\b))?/iu;
/** `standoff M3, 8 mm`. */
const PLAIN_LENGTH = /(?<![\d.,])(\d{1,3}(?:[.,]\d)?) ?mm/u;

/** Reads name and description of a line; undefined for hardware that fastens nothing. */
export function readFastener(text: string): Fastener | undefined {
  const thread = threadIn(text);
  const match = LENGTH.exec(text);
  const kind = KINDS.find(([, words]) => words.test(text))?.[0] ?? (match ? "screw" : undefined);
  if (!kind) return undefined;
  const length = match ? lengthOf(match) : kind === "standoff" ? plainLength(text) : undefined;
  const propertyClass = propertyClassIn(text);
  return {
    kind,
    thread,
    ...(length !== undefined && { length }),
    ...(propertyClass && { propertyClass }),
    soft: NO_METAL.test(text) || SOFT.test(text),
    countersunk: COUNTERSUNK.test(text),
    head: HEXAGON_SOCKET.test(text) ? "hexagon socket" : "other",
  };
}

function lengthOf([, figure, divisor, inches]: RegExpExecArray): number | undefined {
  const amount = Number(figure!.replace(",", ".")) / Number(divisor ?? 1);
  if (!(amount > 0)) return undefined;
  return inches || divisor ? amount * 0.0254 : amount / 1000;
}

function plainLength(text: string): number | undefined {
  const match = PLAIN_LENGTH.exec(text);
  return match ? Number(match[1]!.replace(",", ".")) / 1000 : undefined;
}
