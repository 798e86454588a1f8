/**
 * What class letters stand for: IEEE 315-1975 clause 22 / ASME Y14.44-2008 and the deviations met
 * in practice, among them German, British, Japanese and GOST habits (those from memory). The
 * letters are a hint only: T is a transistor to some and a transformer to others.
 */
import type { PartClass } from "./partWords.ts";

/** Classes that the letters may stand for; the first is taken when nothing else tells. */
export function classesOfLetters(letters: string): readonly PartClass[] {
  return BY_LETTERS.get(letters.toUpperCase()) ?? [];
}

const ROWS: readonly [string, ...PartClass[]][] = [
  ["R RN RR RS RX RT TH NTC PTC LDR VDR", "resistor", "potentiometer"],
  ["RV VR RP POT PT TRIM", "potentiometer", "resistor"],
  ["P", "connector", "potentiometer"],
  ["C CN CP CV CX CY VC", "capacitor", "electrolytic"],
  ["L LP CH FB FL E", "inductor"],
  ["D CR VD", "diode", "led"],
  ["ZD DZ VZ TVS BR", "diode"],
  ["LED LD HL DS", "led", "display"],
  ["DIS DISP LCD", "display"],
  ["Q VT", "transistor", "crystal"],
  // Half the world calls transistors T.
  ["T TR", "transformer", "transistor"],
  ["TX", "transformer"],
  ["V", "tube", "transistor", "diode"],
  ["U IC DA DD OK VO", "ic", "module", "display"],
  ["VREG REG", "ic"],
  ["A MOD", "module", "ic"],
  ["J CON CONN ST BU SK PL XS XP TB SL SV", "connector", "jumper"],
  ["X", "connector", "crystal"],
  ["K", "relay", "connector"],
  ["RE REL RL RLA RY", "relay"],
  ["JP SJ LK", "jumper", "connector"],
  ["S SA SB SW KEY", "switch"],
  ["Y XTAL XO ZQ CF", "crystal"],
  ["F FS FU SI", "fuse"],
  ["XF FH", "fuse holder"],
  ["BT BAT", "battery"],
  ["LS SP SPK BZ", "speaker"],
  ["MK MIC", "microphone"],
  ["TP", "test point"],
  // H heads hardware; some drawing programs give it to pin headers, GOST 2.710 to lamps.
  ["H", "hardware", "connector", "led"],
  ["HW MP MH HOLE", "hardware"],
  ["HS KK", "heat sink"],
];

const BY_LETTERS = new Map<string, readonly PartClass[]>(
  ROWS.flatMap(([letters, ...classes]) =>
    letters.split(" ").map((one): [string, readonly PartClass[]] => [one, classes]),
  ),
);
