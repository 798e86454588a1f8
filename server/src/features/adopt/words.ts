/** Words that tell how a plain guide speaks of its parts, by language; patterns as in `text/stems.ts`. */
import type { Language } from "../../text/language.ts";
import { StemList } from "../../text/stems.ts";

interface AdoptWords {
  /** In a heading: what stands below tells of tests, faults, choices, and fits nothing. */
  readonly elsewhere: readonly string[];
  /** Before a designator: it says where something is, not what is fitted. */
  readonly relations: readonly string[];
  /** Of these, those that lead to the place of what is fitted: "a resistor to R2". */
  readonly places: readonly string[];
  /** What goes into a board, said less plainly than by a verb of fitting: "add the diode D1". */
  readonly adding: readonly string[];
  readonly sockets: readonly string[];
  /** "all", and "all that remain", before a kind of part. */
  readonly all: readonly string[];
  readonly rest: readonly string[];
  readonly except: readonly string[];
  /** Class letters by the plural of the kind. */
  readonly kinds: Readonly<Record<string, string>>;
}

const DATA: Readonly<Record<Language, AdoptWords>> = {
  en: {
    elsewhere:
      "test* check* measur* fault* trouble* debug* problem* issue* errat* calibrat* adjust* align* match* modif* option* variant* choice which theory circuit* how schematic* specif* changelog histor* revision*".split(
        " ",
      ),
    relations:
      "to for of from between near beside by behind below above under over opposite against toward* instead like with on into through than".split(
        " ",
      ),
    places: "to for in on".split(" "),
    adding: "add".split(" "),
    sockets: ["socket*"],
    all: ["all", "all the", "all of the"],
    rest: ["the remaining", "all remaining", "the rest of the", "the other", "all other"],
    except: ["except", "except for", "but", "apart from", "but not"],
    kinds: {
      resistors: "R",
      capacitors: "C",
      diodes: "D",
      transistors: "Q",
      leds: "LED",
      chips: "U",
      ics: "U",
      "integrated circuits": "U",
      inductors: "L",
      coils: "L",
      connectors: "J",
      switches: "S",
      crystals: "Y",
      relays: "K",
    },
  },
  de: {
    elsewhere:
      "test* prüf* mess* fehler* problem* abgleich* einstell* kalibr* änderung* variante* theorie schaltung* funktion* technische auswahl".split(
        " ",
      ),
    relations:
      "zu zum zur für von vom zwischen neben bei hinter unter über gegen statt wie mit auf an aus als".split(
        " ",
      ),
    places: "zu für auf an in als".split(" "),
    adding: "ergänze ergänzen".split(" "),
    sockets: ["sockel*", "*sockel", "*sockeln", "fassung*", "*fassung", "*fassungen"],
    all: ["alle"],
    rest: ["die übrigen", "alle übrigen", "die restlichen", "alle restlichen", "alle anderen"],
    except: ["außer", "ausser", "bis auf", "ohne"],
    kinds: {
      widerstände: "R",
      kondensatoren: "C",
      dioden: "D",
      transistoren: "Q",
      leuchtdioden: "LED",
      leds: "LED",
      ics: "U",
      spulen: "L",
      steckverbinder: "J",
      schalter: "S",
      quarze: "Y",
      relais: "K",
    },
  },
  fr: {
    elsewhere:
      "test* essai* mesure* contrôle* panne* problème* dépannage réglage* calibr* modif* variante* théorie schéma* option*".split(
        " ",
      ),
    relations: "à au aux de du des entre près contre vers sous sur avec pour comme dans".split(" "),
    places: "à au dans sur pour en".split(" "),
    adding: "ajoutez ajouter".split(" "),
    sockets: ["support*"],
    all: ["toutes les", "tous les"],
    rest: ["les autres", "toutes les autres", "tous les autres", "le reste des"],
    except: ["sauf", "excepté", "hormis", "à l'exception de"],
    kinds: {
      résistances: "R",
      condensateurs: "C",
      diodes: "D",
      transistors: "Q",
      del: "LED",
      leds: "LED",
      "circuits intégrés": "U",
      bobines: "L",
      connecteurs: "J",
      interrupteurs: "S",
      quartz: "Y",
      relais: "K",
    },
  },
  nl: {
    elsewhere:
      "test* meting* meten controle* fout* probleem* problemen afregel* kalibr* wijzig* variant* theorie schema* opties".split(
        " ",
      ),
    relations: "naar voor van tussen naast bij achter onder boven tegen met op aan in als".split(
      " ",
    ),
    places: "op aan in voor als".split(" "),
    adding: "voeg".split(" "),
    sockets: ["voetje*", "*voetje", "*voetjes", "ic-voet*"],
    all: ["alle"],
    rest: ["de overige", "alle overige", "de resterende", "alle andere"],
    except: ["behalve", "uitgezonderd", "op"],
    kinds: {
      weerstanden: "R",
      condensatoren: "C",
      diodes: "D",
      transistors: "Q",
      transistoren: "Q",
      leds: "LED",
      spoelen: "L",
      connectoren: "J",
      schakelaars: "S",
      kristallen: "Y",
      relais: "K",
    },
  },
  es: {
    elsewhere:
      "prueba* medici* medida* comprob* fallo* avería* problema* ajuste* calibr* modific* variante* teoría esquema* opcion*".split(
        " ",
      ),
    relations: "a al de del entre cerca junto contra hacia bajo sobre con para como en".split(" "),
    places: "a en para".split(" "),
    adding: "añada añadir agregue".split(" "),
    sockets: ["zócalo*", "zocalo*"],
    all: ["todas las", "todos los"],
    rest: [
      "las demás",
      "los demás",
      "el resto de las",
      "el resto de los",
      "las otras",
      "los otros",
    ],
    except: ["excepto", "salvo", "menos"],
    kinds: {
      resistencias: "R",
      condensadores: "C",
      diodos: "D",
      transistores: "Q",
      ledes: "LED",
      leds: "LED",
      "circuitos integrados": "U",
      bobinas: "L",
      conectores: "J",
      interruptores: "S",
      cristales: "Y",
      relés: "K",
    },
  },
};

/** The words of one language, made ready for finding. */
export class AdoptLexicon {
  readonly elsewhere: StemList<true>;
  readonly relations: ReadonlySet<string>;
  readonly places: ReadonlySet<string>;
  readonly adding: StemList<true>;
  readonly sockets: StemList<true>;
  readonly quantifiers: StemList<"all" | "rest">;
  readonly except: StemList<true>;
  readonly kinds: StemList<string>;

  constructor(language: Language) {
    const words = DATA[language];
    const always = (patterns: readonly string[]) => patterns.map((one) => [one, true] as const);
    this.elsewhere = new StemList(always(words.elsewhere));
    this.relations = new Set(words.relations);
    this.places = new Set(words.places);
    this.adding = new StemList(always(words.adding));
    this.sockets = new StemList(always(words.sockets));
    this.quantifiers = new StemList([
      ...words.all.map((one) => [one, "all"] as const),
      ...words.rest.map((one) => [one, "rest"] as const),
    ]);
    this.except = new StemList(always(words.except));
    this.kinds = new StemList(Object.entries(words.kinds));
  }
}
