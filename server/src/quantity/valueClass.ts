/** What kind of value a part's class letters lead one to expect. The letters are only a hint. */
import type { Unit } from "./value.ts";

export interface ValueClass {
  /** Units of the part's own value, the likeliest first. */
  readonly units: readonly Unit[];
  /** The unit of a number with a bare prefix or a letter for the point: `10k`, `4n7`. */
  readonly code?: Unit;
  /** The unit of a number with nothing behind it. */
  readonly bare?: Unit;
  /** Parts known by a type number (`LM7805`): figures in their text are no ratings. */
  readonly typed?: boolean;
}

const RESISTOR: ValueClass = { units: ["Ω"], code: "Ω", bare: "Ω" };
const LOUDSPEAKER: ValueClass = { units: ["Ω"], code: "Ω" };
const CAPACITOR: ValueClass = { units: ["F"], code: "F" };
const INDUCTOR: ValueClass = { units: ["H"], code: "H" };
const BEAD: ValueClass = { units: ["Ω", "H"], code: "Ω" };
const CRYSTAL: ValueClass = { units: ["Hz"], code: "Hz" };
const BY_VOLTAGE: ValueClass = { units: ["V"] };
const FUSE: ValueClass = { units: ["A"] };
const WIRE: ValueClass = { units: ["m"] };
const TYPED: ValueClass = { units: ["Hz"], typed: true };
/** Nothing known of the class: the text alone decides. */
const ANY: ValueClass = { units: ["Ω", "F", "H", "Hz"] };

/** Class letters after IEEE 315-1975 clause 22 and the regional practice beside it. */
const BY_LETTERS = new Map<string, ValueClass>(
  [
    [RESISTOR, "R RN RP RR RV VR RT RX TH NTC PTC POT VDR LDR RNET"],
    [LOUDSPEAKER, "LS SP SPK BZ P"],
    [CAPACITOR, "C CN CP CV CT CX CY VC"],
    [INDUCTOR, "L LP"],
    [BEAD, "FB"],
    [CRYSTAL, "Y XTAL XO ZQ"],
    [BY_VOLTAGE, "D ZD DZ VZ VD CR TVS BT BAT B G PS K RL RLA RY RE REL LA DS"],
    [FUSE, "F FU FS SI"],
    [WIRE, "W"],
    // X and Q are crystals to some: hertz with their unit are read.
    [TYPED, "U IC Q T TR V VT X J JP CN S SW TP H MH HS M MP OK VO"],
  ].flatMap(([kind, letters]) =>
    (letters as string).split(" ").map((one): [string, ValueClass] => [one, kind as ValueClass]),
  ),
);

/** What to expect of parts with these class letters; unknown or no letters leave it open. */
export function valueClass(letters: string): ValueClass {
  return BY_LETTERS.get(letters) ?? BY_LETTERS.get(letters.toUpperCase()) ?? ANY;
}
