/**
 * Words that tell what kind of part a line of a parts list means, in English, German, French,
 * Spanish and Dutch, with the abbreviations of footprint names. Common practice, no standard.
 */

/** Kinds of parts in the trade's words. */
const PART_CLASSES = [
  "socket",
  "fuse holder",
  "battery holder",
  "test point",
  "hardware",
  "heat sink",
  "wire link",
  "display",
  "led",
  "potentiometer",
  "transformer",
  "relay",
  "crystal",
  "fuse",
  "speaker",
  "microphone",
  "electrolytic",
  "capacitor",
  "connector",
  "jumper",
  "switch",
  "battery",
  "inductor",
  "transistor",
  "diode",
  "resistor",
  "module",
  "ic",
  "tube",
  "unknown",
] as const;
export type PartClass = (typeof PART_CLASSES)[number];

/** Parts that hold another one and may share its designator. */
const HOLDERS: ReadonlySet<PartClass> = new Set(["socket", "fuse holder", "battery holder"]);

/** Classes that are meant whenever they are named, whatever else the text and letters say. */
export const DECISIVE: ReadonlySet<PartClass> = new Set([...HOLDERS, "wire link"]);

/** Longer texts are remarks; what the part is stands at their beginning. */
const MAX_TEXT = 300;

/** All classes whose words occur in a text, the more telling first. */
export function classesNamed(text: string): readonly PartClass[] {
  const folded = withoutAdded(text.slice(0, MAX_TEXT).toLowerCase().replaceAll("_", " "));
  return WORDS.filter(([, words]) => words.test(folded)).map(([name]) => name);
}

/** The text without the holder that a part comes with or sits in, in small letters. */
export function withoutAdded(text: string): string {
  return text.replace(ADDED, " ");
}

/** A chip that comes with its socket, or sits in one, is a chip. */
const ADDED =
  /(?:\b(?:with|incl\w{0,7}|mit|avec|con|met|plus)\b|\+)[^,;]{0,20}(?:socket|sockel|fassung|support)\w*|(?<![-\w]|plug )(?:in|im|sur|en)(?: an?| its| the| einem)? (?:dip |dil |ic )?(?:sockets?|sockel|support|z[oó]calo)\b/g;

/** In the order of `PART_CLASSES`: the first that matches is the most telling. */
const WORDS: readonly [PartClass, RegExp][] = [
  [
    "socket",
    /\b(?:ic|chip|pdip|dip|dil|relay|crystal|transistor|tube|valve|lamp)[ -]?\d{0,2}[ -]?(?:pins?|way|pole)?[ -]?sockets?\b|\bsockets?\b[ ,]+(?:for |\d{1,2} ?pins? )?(?:ic|dip|dil|u\d)|(?:turned|machined)[ -]pin (?:ic )?socket|(?:ic|dip|dil|röhren)[ -]?(?:fassung|sockel)|support (?:de )?(?:ci|circuit|tube)|ic[ -]?voet|z[oó]calo (?:ci|ic|dip|dil)/,
  ],
  [
    "fuse holder",
    /fuse[ -]?(?:holder|clip|base|carrier)|sicherungs?halter|porte[ -]?fusible|porta[ -]?fusible|zekeringhouder/,
  ],
  [
    "battery holder",
    /(?:battery|cell|9 ?v)[ -]?(?:holder|clip|snap|case|socket|box)|batterie[ -]?(?:halter|clip|fach|kasten)|knopfzellenhalter|(?:support|coupleur|clip) de piles?|(?:z[oó]calo|porta) ?(?:bater|pila)|batterijhouder/,
  ],
  [
    "test point",
    /test ?(?:points?|pad)\b|testpoint|messpunkt|prüfpunkt|points? de (?:test|mesure)|meetpunt|punto de prueba/,
  ],
  [
    "hardware",
    /mounting ?hole|stand-?off|spacer|\bscrews?\b(?! ?(?:terminal|connector))|\b(?:nuts?|washers?|knobs?|bezel|rivets?|enclosure|bush(?:es|ing)?|insulators?|mica)\b|\bschrauben?\b|\bmuttern?\b|unterlegscheibe|abstands(?:bolzen|hülse)|\bvis\b|écrou|rondelle|entretoise|tornillo|tuerca|arandela|separador|schroef|\bmoer|sluitring|afstandsbus|led[ -]?holder/,
  ],
  ["heat sink", /heat ?-?sink|kühlkörper|dissipateur|disipador|koellichaam|koelplaat/],
  [
    "wire link",
    /wire[ -]?(?:link|jumper|bridge)|drahtbrücke|draadbrug|pont de fil|puente de (?:cable|hilo)/,
  ],
  [
    "display",
    /\b(?:lcd|oled|display|nixies?|anzeige|afficheur|pantalla)\b|(?:7|seven)[ -]?segment|liquid crystal/,
  ],
  ["led", /\bleds?(?:\b|\d)|\bled(?:rd|c|sc)\d|light[ -]emitting|leuchtdiode|diode lumineuse/],
  [
    "potentiometer",
    /potentiomet|potenci[oó]metro|potmeter|trim-?pot|\btrimmer\b(?! ?(?:cap|kond))|(?:\b|\d ?mm|slide ?)pot\b|\bpoti\b|\bpresets?\b|rheostat|res-adj|einsteller/,
  ],
  [
    "transformer",
    /transformer|transformator|\btrafo|transformateur|transformador|übertrager|balun/,
  ],
  ["relay", /\brelays?\b|\brelais\b|\brel[eé]s?\b/],
  [
    "crystal",
    /(?<!liquid )crystal|\bxtal|\bquart?z|\bresonat|\b(?:vc|tc)?xo\b|oscillator|oszillator|kristal\b|cristal\b|\bhc-?49/,
  ],
  ["fuse", /\bfuses?\b|polyfuse|resettable|\bsicherung|\bfusible\b|\bzekering\b/],
  [
    "speaker",
    /speaker|buzzer|beeper|sounder|\bpiezo|\bsummer\b|lautsprecher|haut-parleur|altavoz|zumbador|luidspreker|zoemer/,
  ],
  ["microphone", /microphone|mikrofon|electret|microfoon|micr[oó]fono/],
  [
    "electrolytic",
    /electrol[yií]t|électrolyt|elektrolyt|\bel[kc]os?\b|tantal|(?:non-?|un)?polari[sz]ed cap|\bcpol|\bcp (?:radial|axial|elec|eia)|\bcapae|capacitor polari[sz]ed|\bc polari[sz]ed/,
  ],
  [
    "capacitor",
    /capacit|capactior|condens|kondensator|\bmlcc\b|\bcaps?\b|\bc (?:disc|rect|axial|radial|\d)/,
  ],
  [
    "connector",
    /connect(?:or|eur)|\bconn\b|\bpin ?hea?d|\bheaders?\b|\bhdr\b|pin ?header|pin ?socket|\bsockets?\b|\bjacks?\b|terminal ?(?:block|strip)|screw terminal|\bplugs?\b|receptacle|\busb\b|d-?sub\b|\bxlr\b|\bbnc\b|\brca\b|\bidc\b|stift(?:leiste|e)|buchse|stecker|klemme\b|klemm|wannenstecker|embase|bornier|\bfiche\b|\bborne\b|conector|\bsteker|kroonsteen|printklem|\bmolex\b|\bjst\b/,
  ],
  [
    "jumper",
    /\bjumpers?\b|solder ?(?:bridge|jumper)|lötbrücke|kurzschlussbrücke|cavalier|\bpuente\b/,
  ],
  [
    "switch",
    /(?<!analogu?e? |load )\bswitch(?:es)?\b|\bsw (?:sp|dp|push|dip|rotary)|\b(?:push)?buttons?\b|tact(?:ile)?\b|\bencoder|\btaster\b|schalter\b|interrupteur|bouton|interruptor|pulsador|conmutador|schakelaar|drukknop|\b[sd]p[sd]t\b/,
  ],
  [
    "battery",
    /\bbatter(?:y|ies?)\b|\bbater[ií]a|batterij|coin ?cell|button ?cell|\bknopfzelle|\bpile\b|\bcr20\d\d\b/,
  ],
  [
    "inductor",
    /induct|\bchokes?\b|\bcoils?\b|ferrite|\bbeads?\b|drossel|\bspulen?\b|\bbobin[ae]|spoel\b|toroid|ringkern|\bl (?:axial|radial)/,
  ],
  ["transistor", /transistor|mosfet|\b[jn]?-?fets?\b|\bbjt\b|\bnpn\b|\bpnp\b|darlington/],
  [
    "diode",
    /diod|zener|schottky|\brectifier|gleichrichter|redresseur|\btvs\b|varicap|\bd (?:do|sod|sma|smb|melf)/,
  ],
  [
    "resistor",
    /resist|résist|widerst|weerstand|thermistor|\bntc\b|varistor|\bldr\b|\bres\b|\br (?:axial|array|\d)/,
  ],
  [
    "module",
    /\bmodul[eo]?s?\b|breakout|dev ?kit|(?:development|breakout|carrier) board|\bshield\b/,
  ],
  [
    "ic",
    /\bics?\b|op-?amp|operational amplifier|microcontroller|processor|\btimer\b|regulator|comparator|\bgates?\b|flip-?flop|\bcounter\b|eprom|\bs?ram\b|opto-?(?:coupler|isolator)|optokoppler|\b(?:line |sink )?driver\b|\btreiber\b|inverter|integrated circuit|circuit intégré|circuito integrado|schaltkreis|multiplexer|converter|voltage reference/,
  ],
  ["tube", /\b(?:vacuum|electron|geiger)[ -]tube|röhre\b|\btriode\b|\bpentode\b/],
];
