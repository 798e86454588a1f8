/**
 * What the names of columns mean, in English, German, French, Spanish and Dutch. Names lie
 * (`Part` heads designators, values or order numbers), so one name may have several meanings.
 * Collected from public parts lists; common practice, no standard.
 */
import type { Meaning } from "./partsList.ts";

/** What a column's name may stand for. */
export interface HeaderName {
  /** Meanings with their rank: 0 where the name is plain, higher where it is loose. */
  readonly ranks: ReadonlyMap<Meaning, number>;
  /** A fitted column that marks what is left out: `DNP`. */
  readonly negative: boolean;
  /** Unit named in the header: `mm` of `Height (mm)`. */
  readonly unit?: string;
}

/** Names of a meaning, the plainest group first; a name's rank is its group's place. */
const NAMES: { readonly [meaning in Meaning]: readonly string[] } = {
  item: [
    "item | item no | item number | line | line no | lfd nr | lfdnr | nr | no | n | # | row | pos | position | posten | pos nr | poste | repere no | linea | partida | artikel | regel | volgnummer | num | index",
    "id",
  ],
  designator: [
    "designator | designators | reference designator | reference designators | refdes | ref des | ref designator | ref designators | references | reference | ref | refs | reference s | references s | designator s | bezeichner | referenz | referenzen | referenzbezeichner | bauteilbezeichner | bauteilbezeichnung | bauteilnummer | repere | reperes | referencia | referencias | designador | designadores | referentie | referenties | aanduiding | schemaverwijzing | schematic reference | schematic references | circuit reference | component reference | part reference | part references | ref no | ref nos | circuit ref",
    "parts | part | part # | component | components | bauteil | bauteile | composant | composants | componente | componentes | onderdeel | onderdelen | symbol | symbols | location | locations | id | position | pos | nombre",
  ],
  quantity: [
    "quantity | qty | qnty | qte | quantite | anzahl | menge | stuck | stuckzahl | stk | cantidad | cant | aantal | hoeveelheid | count | pcs | pieces | units | amount | quant | nombre | quantity per pcb | quantity per board | quantity per kit | qty per board | qty per kit | qty per pcb | qty board | qty kit | anz | number of parts | unidades | stuks",
    "number | total | no | n | #",
  ],
  value: [
    "value | values | val | wert | werte | valeur | valeurs | valor | valores | waarde | waarden | wert typ | typ wert | value type | wert bezeichnung | nominal value",
    "comment | comments | kommentar | commentaire | comentario",
    "designation | name | type | typ | tipo | part | part name | component | components | component name | bauteil | composant | componente | onderdeel | bezeichnung | benennung | benaming | naam | device | part type | part value",
  ],
  tolerance: ["tolerance | tol | toleranz | tolerancia | tolerantie | tol %"],
  power: [
    "power | power rating | wattage | watt | watts | leistung | belastbarkeit | puissance | potencia | vermogen | rated power",
  ],
  voltage: [
    "voltage | voltage rating | rated voltage | max voltage | spannung | nennspannung | spannungsfestigkeit | tension | voltaje | spanning | volt | volts | v | vdc | working voltage",
    "rating",
  ],
  current: [
    "current | current rating | rated current | strom | nennstrom | courant | corriente | stroom | amp | amps | ampere",
  ],
  package: [
    "footprint | footprints | package | packages | pcb footprint | gehause | bauform | boitier | empreinte | huella | encapsulado | behuizing | footprint name | package footprint | case package",
    "pattern | land pattern | size | case | case size | grosse | taille | tamano | maat | rastermass | form | device",
  ],
  height: [
    "height | body height | max height | component height | hohe | bauhohe | hauteur | altura | hoogte | bouwhoogte",
  ],
  description: [
    "description | desc | descr | part description | component description | beschreibung | descripcion | description fr | omschrijving | beschrijving | details | detail | spec | specs | specification | specifications | spezifikation | especificacion",
    "bezeichnung | benennung | designation | benaming | denominacion | libelle | intitule | name | part name | comment | kommentar | commentaire | comentario | component | components | componente | composant | bauteil | onderdeel | type | typ | tipo | component type | part type | what | kind | art | category | kategorie | categorie | categoria | nombre | naam | item | article | articulo | artikel | material | device | libpart | cmp name | libref | part",
  ],
  "part number": [
    "mpn | manufacturer part | manufacturer part number | manufacturer part no | manufacturer part # | manufacturer pn | mfr # | mfr part | mfr part # | mfr part no | mfr part number | mfg part # | mfg part number | mfg pn | mfr pn | part number | part no | partnumber | part num | pn | p n | order number | order no | order code | ordercode | stock code | stock number | supplier part | supplier part number | supplier part # | vendor part | vendor part number | catalog number | sku | artikelnummer | artikel nr | art nr | artnr | bestellnummer | bestell nr | best nr | hersteller nr | herstellernummer | herstellerteilenummer | teilenummer | numero de piece | reference fabricant | reference fournisseur | ref fabricant | ref fournisseur | code article | numero de parte | numero de pieza | codigo | referencia fabricante | bestelnummer | onderdeelnummer | artikelcode",
    "part # | supplier and ref | code | nummer | numero | part",
  ],
  fitted: [
    "fitted | populated | populate | mounted | mount | assemble | assembled | placed | place | stuffed | stuff | installed | install | fit | in kit | bestuckt | bestuckung | bestucken | monte | monter | equipe | montado | montar | poblado | colocado | geplaatst | gemonteerd | bestukt | plaatsen",
    "dnp | dnf | dni | dnm | do not populate | do not place | do not fit | do not install | do not mount | do not stuff | dont place | dont populate | dont fit | not fitted | not populated | not placed | not mounted | no populate | no pop | nopop | no stuff | nostuff | np | nf | exclude from bom | exclude from board | exclude | unpopulated | nicht bestuckt | nicht bestucken | unbestuckt | nb | n b | ne pas monter | non monte | non equipe | non cable | no montar | no montado | no colocar | no poblar | niet plaatsen | niet geplaatst | niet bestukken | niet monteren",
  ],
  optional: [
    "optional | option | options | opt | is optional | optionnel | option s | facultatif | opcional | optioneel | wahlweise",
  ],
  spare: [
    "spare | spares | spare qty | extra | extras | reserve | ersatz | reservestuck | reserveteile | rechange | rechanges | repuesto | repuestos | recambio | recambios | reserveonderdelen",
  ],
  board: [
    "board | boards | pcb | pcb name | board name | platine | leiterplatte | baugruppe | carte | placa | printplaat | print",
  ],
  side: [
    "side | layer | board side | mounting side | seite | bestuckungsseite | lage | cote | face | lado | cara | capa | zijde | kant | laag",
  ],
  bag: ["bag | bag no | bag number | tute | beutel | sachet | bolsa | zakje | zak"],
  notes: [
    "note | notes | remark | remarks | hint | hints | bemerkung | bemerkungen | anmerkung | anmerkungen | hinweis | hinweise | notiz | notizen | remarque | remarques | nota | notas | observacion | observaciones | observations | opmerking | opmerkingen | possible sources and notes | comments | kommentare | commentaires | comentarios | usage | use | function | funktion | fonction | funcion | functie",
    "comment | kommentar | commentaire | comentario",
  ],
};

/** The group of do-not-fit names within the fitted column's names. */
const NEGATIVE_GROUP = 1;

/** Columns that lists have and that mean nothing here; their names tell a header row. */
const OTHERS =
  "manufacturer | mfr | mfg | maker | make | brand | hersteller | fabricant | fabricante | fabrikant | supplier | suplier | supplier 1 | vendor | distributor | source | sources | lieferant | fournisseur | proveedor | leverancier | price | unit price | total price | ppu | cost | unit cost | total cost | preis | einzelpreis | gesamtpreis | prix | precio | prijs | url | link | links | web | datasheet | data sheet | datenblatt | fiche technique | hoja de datos | library | lib | bibliothek | sheet | blatt | popularity | lifecycle | status | rohs | stock | date | rotation | orientation | mid x | mid y | x | y | center x | center y | pad | pads | pins | pin count | technology | mounting type | temperature | dielectric | material | color | colour | farbe | couleur | kleur | weight | currency";

const BY_NAME = buildNames();
const OTHER_NAMES = new Set(namesIn(OTHERS));

/** Looser than whole names: what a name says with more words round it. */
const PATTERNS: readonly (readonly [RegExp, Meaning])[] = [
  [
    /\b(?:mpn|sku|p n)\b|\b(?:part|order|article|stock|catalog|product|item)s? (?:number|num|no|nr|code|id|#)(?: |$)|\b(?:bestell|artikel|bestel)(?:nummer| nr| no)|^oc\b/,
    "part number",
  ],
  [/\bref(?:erence)? ?des|\bdesignator/, "designator"],
  [
    /^(?:qty|quantity|anzahl|menge|qte|quantite|cantidad|aantal|count)\b|\b(?:qty|quantity)$/,
    "quantity",
  ],
  [/\bdescription\b|\bbeschreibung\b|\bdescripcion\b|\bomschrijving\b/, "description"],
  [/\bfootprint\b|\bpackage\b/, "package"],
  [/\bnotes?\b|\bremarks?\b|\bbemerkung|\bremarque|\bopmerking/, "notes"],
  [/\bheight\b|\bhohe\b|\bhauteur\b|\baltura\b|\bhoogte\b/, "height"],
];

/** What the header cell may mean; undefined for a name that says nothing. */
export function headerName(text: string): HeaderName | undefined {
  const { name, unit } = foldHeader(text);
  if (name === "" || name.length > 60) return undefined;
  const known = BY_NAME.get(name);
  if (known) return unit === undefined ? known : { ...known, unit };
  if (OTHER_NAMES.has(name)) return NO_MEANING;
  const pattern = PATTERNS.find(([words]) => words.test(name));
  if (!pattern) return undefined;
  return {
    ranks: new Map([[pattern[1], 1]]),
    negative: false,
    ...(unit !== undefined && { unit }),
  };
}

const NO_MEANING: HeaderName = { ranks: new Map(), negative: false };

/** A header in lower case, without accents and signs, and the unit in its brackets. */
export function foldHeader(text: string): { name: string; unit?: string } {
  const plain = text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/ß/g, "ss")
    .replace(/\((?:s|en|n|es|e)\)/g, (plural) => plural.slice(1, -1));
  const unit = /[([](?:in )?([a-zµμ%"Ωω]{1,4})[)\]]/u.exec(plain)?.[1];
  const name = plain
    .replace(/[([{][^)\]}]*[)\]}]?/g, " ")
    .replace(/[^\p{L}\p{N}#%]+/gu, " ")
    .trim();
  const folded = name === "#" ? name : name.replace(/ ?# ?/g, " # ").trim();
  return unit === undefined ? { name: folded } : { name: folded, unit };
}

function buildNames(): ReadonlyMap<string, HeaderName> {
  const names = new Map<string, { ranks: Map<Meaning, number>; negative: boolean }>();
  for (const [meaning, groups] of Object.entries(NAMES) as [Meaning, readonly string[]][]) {
    groups.forEach((group, index) => {
      const negative = meaning === "fitted" && index === NEGATIVE_GROUP;
      for (const name of namesIn(group)) {
        const entry = names.get(name) ?? { ranks: new Map<Meaning, number>(), negative };
        const rank = meaning === "fitted" ? 0 : index;
        if (!entry.ranks.has(meaning)) entry.ranks.set(meaning, rank);
        names.set(name, entry);
      }
    });
  }
  return names;
}

function namesIn(group: string): string[] {
  return group.split(" | ").map((name) => name.trim());
}
