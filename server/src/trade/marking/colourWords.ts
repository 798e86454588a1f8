/** The colours of bands and the words about marks, in the languages of guides. */
import type { Language } from "../../text/language.ts";
import type { Colour } from "./colours.ts";

/** Words of each colour, the one to write first. */
const WORDS: { readonly [language in Language]: { readonly [colour in Colour]: string } } = {
  en: {
    black: "black",
    brown: "brown",
    red: "red",
    orange: "orange",
    yellow: "yellow",
    green: "green",
    blue: "blue",
    violet: "violet purple",
    grey: "grey gray",
    white: "white",
    gold: "gold golden",
    silver: "silver",
    pink: "pink",
  },
  de: {
    black: "schwarz schwarze schwarzer",
    brown: "braun braune brauner",
    red: "rot rote roter",
    orange: "orange",
    yellow: "gelb gelbe gelber",
    green: "grün grüne grüner gruen",
    blue: "blau blaue blauer",
    violet: "violett violette violetter lila",
    grey: "grau graue grauer",
    white: "weiß weiss weiße weißer",
    gold: "gold golden goldener",
    silver: "silber silbern silberner",
    pink: "rosa",
  },
  fr: {
    black: "noir noire",
    brown: "marron brun brune",
    red: "rouge",
    orange: "orange",
    yellow: "jaune",
    green: "vert verte",
    blue: "bleu bleue",
    violet: "violet violette",
    grey: "gris grise",
    white: "blanc blanche",
    gold: "or doré dorée",
    silver: "argent argenté argentée",
    pink: "rose",
  },
  nl: {
    black: "zwart zwarte",
    brown: "bruin bruine",
    red: "rood rode",
    orange: "oranje",
    yellow: "geel gele",
    green: "groen groene",
    blue: "blauw blauwe",
    violet: "violet paars paarse",
    grey: "grijs grijze",
    white: "wit witte",
    gold: "goud gouden",
    silver: "zilver zilveren",
    pink: "roze",
  },
  es: {
    black: "negro negra",
    brown: "marrón marron café",
    red: "rojo roja",
    orange: "naranja",
    yellow: "amarillo amarilla",
    green: "verde",
    blue: "azul",
    violet: "violeta morado",
    grey: "gris",
    white: "blanco blanca",
    gold: "oro dorado dorada",
    silver: "plata plateado plateada",
    pink: "rosa",
  },
};

const BY_WORD: ReadonlyMap<string, ReadonlyMap<string, Colour>> = new Map(
  Object.entries(WORDS).map(([language, words]) => [language, wordMap(words)]),
);

function wordMap(words: { readonly [colour in Colour]: string }): ReadonlyMap<string, Colour> {
  const entries = Object.entries(words) as [Colour, string][];
  return new Map(
    entries.flatMap(([colour, text]) =>
      text.split(" ").map((word): [string, Colour] => [word, colour]),
    ),
  );
}

/** The colour that a word in lower case names in a language. */
export function colourOfWord(word: string, language: Language): Colour | undefined {
  return BY_WORD.get(language)?.get(word);
}

/** The word for a colour in a language. */
export function wordOfColour(colour: Colour, language: Language): string {
  return WORDS[language][colour].split(" ", 1)[0]!;
}

/** Words that join the last colour to those before it. */
export const AND: ReadonlySet<string> = new Set(["and", "und", "et", "en", "y", "e"]);

/** Words that tell that colours are bands, as patterns of `text/stems.ts`. */
export const BAND_WORDS: readonly string[] = [
  "band|bands|ring|rings|stripe|stripes|colour code*|color code*|colour-coded|color-coded",
  "ringe|ringen|farbring*|farbcode*|streifen|farbstreifen",
  "anneau|anneaux|bague|bagues|bande|bandes|code des couleurs|code couleur*",
  "kleurring*|kleurcode*|kleurband*|streep|strepen",
  "banda|bandas|anillo|anillos|franja|franjas|código de colores",
].flatMap((words) => words.split("|"));

/** Words before a printed mark, as patterns of `text/stems.ts`. */
export const MARKED_WORDS: readonly string[] = [
  "marked|labelled|labeled|stamped|printed|marking|markings",
  "beschriftet*|bedruckt*|gekennzeichnet*|aufdruck|beschriftung|kennzeichnung",
  "marqué*|marquage|inscription",
  "gemerkt|gemarkeerd*|opdruk|opschrift|bedrukt*|markering",
  "marcad*|rotulad*|impres*|inscripción",
].flatMap((words) => words.split("|"));

/** Words that may stand between such a word and the mark. */
export const MARK_FILLERS: ReadonlySet<string> = new Set(
  [
    "with as the code figures number",
    "mit als dem der den code zahl",
    "avec par le la les code chiffres",
    "met als de het code",
    "con como el la los de código",
  ].flatMap((words) => words.split(" ")),
);
