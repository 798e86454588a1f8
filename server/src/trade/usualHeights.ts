/**
 * Usual body heights above the board in mm, by the words of package names.
 *
 * Sources, marked at the rows:
 *   K3D     kicad-3d-models-in-freecad, generator parameter files (read)
 *   memory  makers' drawings or JEDEC outlines as remembered
 *   common  common practice
 */
import type { PartClass } from "./partWords.ts";

export interface UsualHeight {
  readonly mm: number;
  /** Follows "usual height of": `a DO-35 diode`. */
  readonly of: string;
}

interface Row extends UsualHeight {
  readonly words: RegExp;
  /** Only for these classes. */
  readonly for?: readonly PartClass[];
  /** Also looked for in the description and value, where package names may stand, too. */
  readonly anywhere?: boolean;
}

const VERTICAL = "(?=.*(?:vert|upright|standing|stehend))";
const FLAT = "(?=.*(?:horiz|tabdown|flat|lying|liegend))";
/** A figure after the words must not go on: TO-92 is not TO-926. */
const END = "(?!\\d)";

function words(pattern: string, before = ""): RegExp {
  const own = `(?<![a-z\\d.])(?:${pattern})`;
  return new RegExp(before === "" ? own : `^${before}.*${own}`);
}

const ROWS: readonly Row[] = [
  // Wire links: common.
  {
    words: words("wire[ -]?link|drahtbrücke|draadbrug"),
    mm: 0.8,
    of: "a wire link",
    for: ["wire link"],
    anywhere: true,
  },

  // Axial resistors, lying: K3D; their wattages are common practice.
  ...axial("0204", 1.6, 3.6),
  ...axial("0207", 2.5, 6.3),
  ...axial("0309", 3.2, 9),
  ...axial("0411", 3.6, 9.9),
  ...axial("0414", 4.5, 11.9),
  ...axial("0516", 5, 15.5),
  ...axial("0617", 6, 17),
  ...axial("0918", 9, 18),
  ...axial("0922", 9, 20),
  // The figure is the pitch in inches: common.
  {
    words: words("axial-0\\.[34]"),
    mm: 2.5,
    of: "a lying quarter-watt resistor",
    for: ["resistor"],
  },
  { words: words("axial-0\\.[56]"), mm: 3.2, of: "a lying half-watt resistor", for: ["resistor"] },

  // Diodes: memory; upright ones are the body's length and 1 mm of lead.
  { words: words(`do-?35${END}`, VERTICAL), mm: 5.2, of: "a DO-35 diode standing on end" },
  { words: words(`do-?41${END}`, VERTICAL), mm: 6.2, of: "a DO-41 diode standing on end" },
  { words: words(`do-?35${END}`), mm: 1.9, of: "a DO-35 diode", anywhere: true },
  { words: words(`do-?41${END}`), mm: 2.7, of: "a DO-41 diode", anywhere: true },
  { words: words("do-?15(?!\\d)|do-?204ac"), mm: 3.6, of: "a DO-15 diode", anywhere: true },
  { words: words("do-?201|do-?27(?!\\d)"), mm: 5.3, of: "a DO-201 diode", anywhere: true },
  {
    words: words("do-?214|sm[abc](?![a-z\\d])"),
    mm: 2.3,
    of: "an SMA to SMC diode",
    for: ["diode", "led"],
  },
  { words: words("sod-?123"), mm: 1.2, of: "a SOD-123 diode" },
  { words: words("sod-?323"), mm: 1, of: "a SOD-323 diode" },
  { words: words("sod-?80|mini-?melf|ll-?34"), mm: 1.6, of: "a MiniMELF diode" },

  // DIP: K3D, body 3.3 and stand-off 0.38 (the JEDEC MS-001 maximum is 5.33); socket 1.3 + 2.67.
  {
    words: words("(?:p?dip|dil)-?\\d.*socket"),
    mm: 7.6,
    of: "a DIP chip in a turned-pin socket",
    for: ["ic"],
  },
  {
    words: words("(?:p?dip|dil)(?![a-z])|\\d+ ?pins? (?:dip|dil)"),
    mm: 4,
    of: "a turned-pin DIP socket",
    for: ["socket"],
    anywhere: true,
  },
  {
    words: words("(?:p?dip|dil)-?\\d{1,2}|(?:p?dip|dil)(?![a-z\\d])"),
    mm: 3.7,
    of: "a DIP chip",
    for: ["ic", "unknown"],
    anywhere: true,
  },

  // Transistors: memory, as mounted, leads included.
  {
    words: words(`to-?92l?${END}`),
    mm: 8,
    of: "a TO-92 package (7 to 9 mm as mounted)",
    anywhere: true,
  },
  { words: words(`to-?126${END}`, FLAT), mm: 3, of: "a TO-126 transistor lying" },
  { words: words(`to-?220(?:ab|fp?)?${END}`, FLAT), mm: 4.5, of: "a TO-220 package lying" },
  { words: words(`to-?(?:247|3pf?)${END}`, FLAT), mm: 5, of: "a TO-247 package lying" },
  { words: words(`to-?126${END}`), mm: 14.5, of: "an upright TO-126 transistor", anywhere: true },
  {
    words: words(`to-?220(?:ab|fp?)?${END}`),
    mm: 19,
    of: "an upright TO-220 package (18 to 20 mm as mounted)",
    anywhere: true,
  },
  { words: words(`to-?247${END}`), mm: 24, of: "an upright TO-247 package", anywhere: true },
  { words: words(`to-?18${END}`), mm: 5.3, of: "a TO-18 transistor", anywhere: true },
  { words: words(`to-?(?:5|39)${END}`), mm: 6.6, of: "a TO-39 transistor", anywhere: true },

  // Surface-mount packages: JEDEC maxima from memory (MS-012, MO-153, MS-026, TO-236 …).
  { words: words("sot-?223"), mm: 1.8, of: "a SOT-223 package" },
  { words: words("sot-?89"), mm: 1.6, of: "a SOT-89 package" },
  { words: words("sot-?(?:23|323|363)"), mm: 1.45, of: "a SOT-23 package", anywhere: true },
  { words: words("dpak|to-?252"), mm: 2.4, of: "a DPAK package" },
  { words: words("d2pak|to-?263"), mm: 4.6, of: "a D2PAK package" },
  { words: words("(?:ht|[tmv])ssop-?\\d|msop-?\\d"), mm: 1.2, of: "a TSSOP or MSOP chip" },
  { words: words("ssop-?\\d"), mm: 2, of: "an SSOP chip" },
  { words: words("so(?:ic|p|l)?-?\\d"), mm: 1.75, of: "an SOIC chip" },
  { words: words("[tl]?qfp-?\\d"), mm: 1.6, of: "a QFP chip" },
  { words: words("[vuw]?qfn-?\\d|[tuw]?dfn-?\\d|wson-?\\d"), mm: 1, of: "a QFN or DFN chip" },
  { words: words("plcc-?\\d"), mm: 4.4, of: "a PLCC chip" },

  // Tantalum drops and chips by case letter (EIA-535BAAC): memory.
  {
    words: words("case-?a(?![a-z])"),
    mm: 1.8,
    of: "a case A tantalum capacitor",
    for: ["capacitor", "electrolytic"],
  },
  {
    words: words("case-?b(?![a-z])"),
    mm: 2.1,
    of: "a case B tantalum capacitor",
    for: ["capacitor", "electrolytic"],
  },
  {
    words: words("case-?[cd](?![a-z])"),
    mm: 2.9,
    of: "a case C or D tantalum capacitor",
    for: ["capacitor", "electrolytic"],
  },

  // LEDs: memory, seated on the board; makers differ by half a millimetre.
  {
    words: words("(?:led ?)?d?3(?:\\.0)? ?mm", FLAT),
    mm: 3.3,
    of: "a 3 mm LED lying",
    for: ["led"],
  },
  {
    words: words("(?:led ?)?d?3(?:\\.0)? ?mm"),
    mm: 5.3,
    of: "a 3 mm LED",
    for: ["led"],
    anywhere: true,
  },
  {
    words: words("(?:led ?)?d?5(?:\\.0)? ?mm", FLAT),
    mm: 5.9,
    of: "a 5 mm LED lying",
    for: ["led"],
  },
  {
    words: words("(?:led ?)?d?5(?:\\.0)? ?mm"),
    mm: 8.7,
    of: "a 5 mm LED",
    for: ["led"],
    anywhere: true,
  },

  // Crystals: memory.
  {
    words: words("hc-?49[ /_-]?(?:sd|smd|smt)|hc-?49smd"),
    mm: 4.3,
    of: "an HC-49 crystal for surface mounting",
  },
  {
    words: words("hc-?49[ /_-]?(?:4h|us|s(?!mt|md|d))"),
    mm: 3.7,
    of: "a low HC-49/S crystal",
    for: ["crystal"],
    anywhere: true,
  },
  {
    words: words("hc-?49(?:[ /_-]?u)?(?![a-z\\d])"),
    mm: 13.5,
    of: "an HC-49/U crystal",
    for: ["crystal"],
    anywhere: true,
  },

  // Relays: K3D.
  {
    words: words("srd|36\\.11|sugar ?cube"),
    mm: 15.5,
    of: "a sugar-cube relay",
    for: ["relay"],
    anywhere: true,
  },
  { words: words("g2rl"), mm: 15.7, of: "a G2RL relay", for: ["relay"], anywhere: true },
  { words: words("g5le"), mm: 19, of: "a G5LE relay", for: ["relay"], anywhere: true },

  // Screw terminals: K3D; the name of the series tells more than the pitch.
  {
    words: words("mkds-?1[,.]5"),
    mm: 13.8,
    of: "a screw terminal MKDS 1,5",
    for: ["connector"],
    anywhere: true,
  },
  {
    words: words("pt-?1[,.]5-\\d+-3\\.5"),
    mm: 9.2,
    of: "a screw terminal with 3.5 mm pitch",
    for: ["connector"],
    anywhere: true,
  },
  {
    words: words(
      "terminal ?block|screw ?terminal|bornier|schraubklemme|printklemme",
      "(?=.*3[.,]5)",
    ),
    mm: 9.2,
    of: "a screw terminal with 3.5 mm pitch",
    for: ["connector"],
    anywhere: true,
  },
  {
    words: words("terminal ?block|screw ?terminal|bornier|schraubklemme|printklemme"),
    mm: 11.4,
    of: "a screw terminal with 5 mm pitch (up to 13.8 mm are made)",
    for: ["connector"],
    anywhere: true,
  },

  // Pin headers: memory, 2.54 mm pitch; box headers and lying ones: common.
  {
    words: words(
      "pin ?(?:header|socket|strip)|stiftleiste",
      "(?=.*(?:horiz|angle|right))(?!.*p(?:1\\.27|2\\.0))",
    ),
    mm: 5,
    of: "an angled pin header",
    for: ["connector", "jumper"],
    anywhere: true,
  },
  {
    words: words("idc[ -]?header|box header|wannenstecker"),
    mm: 9,
    of: "a box header",
    for: ["connector"],
    anywhere: true,
  },
  {
    words: words(
      "pin ?(?:header|hea?d|socket|strip)|hdr|stiftleiste|2\\.54 ?mm header|ma0\\d-[12]",
      "(?!.*p(?:1\\.27|2\\.0))",
    ),
    mm: 8.5,
    of: "a pin header of 2.54 mm pitch",
    for: ["connector", "jumper"],
    anywhere: true,
  },
  {
    words: /^0?[12]x\d{1,2}(?!\d)/,
    mm: 8.5,
    of: "a pin header of 2.54 mm pitch",
    for: ["connector", "jumper"],
  },

  // Switches: K3D.
  {
    words: words("sw dip.*piano|dip ?switch.*piano"),
    mm: 10.2,
    of: "a piano-key DIP switch",
    for: ["switch"],
    anywhere: true,
  },
  {
    words: words("sw dip|dip ?-?switch"),
    mm: 5.9,
    of: "a DIP switch",
    for: ["switch"],
    anywhere: true,
  },

  // Multi-turn trimmers: K3D draws those adjusted from the side; the top-adjusted from memory.
  {
    words: words("3296[wy]?|multi-?turn"),
    mm: 10,
    of: "an upright multi-turn trimmer",
    for: ["potentiometer"],
    anywhere: true,
  },
  {
    words: words("300[56][pwy]?"),
    mm: 6.4,
    of: "a lying multi-turn trimmer",
    for: ["potentiometer"],
    anywhere: true,
  },
];

/** A lying DIN body, and the same standing on end (`0207/2V` in older libraries). */
function axial(size: string, across: number, length: number): Row[] {
  const lying = { mm: across, of: `a lying DIN${size} body` };
  const standing = { mm: length + 1, of: `a DIN${size} body standing on end` };
  return [
    { ...standing, words: new RegExp(`(?:din|^|[_ /-])${size}(?:/\\d+v|(?=.*vertical))`) },
    {
      ...lying,
      words: new RegExp(`(?:din|^|[_ /-])${size}(?!\\d)`),
      for: ["resistor", "inductor", "diode", "capacitor"],
    },
  ];
}

/** A clip for a TO-126 package is not as high as that package. */
const IN_WORDS = new Set<PartClass>(["diode", "led", "transistor", "ic"]);

/**
 * The first row whose words stand in the package's name; then those that may stand in the
 * description or value as well.
 */
export function usualHeight(
  part: PartClass,
  packageName: string,
  otherText: string,
): UsualHeight | undefined {
  const fits = (row: Row, text: string) =>
    (!row.for || row.for.includes(part)) && row.words.test(text);
  const name = fold(packageName);
  const text = fold(otherText);
  return (
    ROWS.find((row) => name !== "" && fits(row, name)) ??
    ROWS.find((row) => row.anywhere && (row.for || IN_WORDS.has(part)) && fits(row, text))
  );
}

function fold(text: string): string {
  return text.slice(0, 200).toLowerCase().replaceAll("_", " ");
}
