/**
 * Hazards that a kit's builder meets: whom they harm, the signal words that follow from it, and the
 * sign of ISO 7010 that stands for each.
 */
import type { Signal } from "../../syntax/signalWords.ts";
import type { SignCode } from "../signs/signs.ts";

/** What comes of a hazard if all goes badly: things break, someone is hurt, someone dies. */
export type Harm = "damage" | "injury" | "death";

interface HazardEntry {
  readonly harm: Harm;
  readonly sign: SignCode;
}

/**
 * ISO 7010 has no sign for harm to parts alone; the general mandatory sign stands for what is to be
 * done. It has none for stored charge, fumes of solder and heavy parts either: the nearest is taken.
 */
const TABLE = {
  "electric shock": { harm: "death", sign: "W012" },
  "stored charge": { harm: "injury", sign: "W012" },
  "hot surface": { harm: "injury", sign: "W017" },
  "eye injury": { harm: "injury", sign: "M004" },
  fumes: { harm: "injury", sign: "W016" },
  "sharp edge": { harm: "injury", sign: "W022" },
  "moving parts": { harm: "injury", sign: "W024" },
  crushing: { harm: "injury", sign: "W024" },
  "heavy load": { harm: "injury", sign: "W001" },
  fire: { harm: "injury", sign: "W021" },
  explosion: { harm: "death", sign: "W002" },
  "optical radiation": { harm: "injury", sign: "W027" },
  "radio-frequency burn": { harm: "injury", sign: "W005" },
  "magnetic field": { harm: "injury", sign: "W006" },
  "loud noise": { harm: "injury", sign: "W038" },
  "corrosive substance": { harm: "injury", sign: "W023" },
  "toxic substance": { harm: "injury", sign: "W016" },
  battery: { harm: "injury", sign: "W026" },
  "static discharge": { harm: "damage", sign: "M001" },
  "wrong polarity": { harm: "damage", sign: "M001" },
} as const satisfies Readonly<Record<string, HazardEntry>>;

export type Hazard = keyof typeof TABLE;

export const HAZARDS = Object.keys(TABLE) as readonly Hazard[];

export function harmOf(hazard: Hazard): Harm {
  return TABLE[hazard].harm;
}

/** The sign of a hazard; of one that is not in the list, the general one for its signal word. */
export function signOf(hazard: Hazard | undefined, signal: Signal): SignCode {
  if (hazard) return TABLE[hazard].sign;
  return signal === "NOTICE" ? "M001" : "W001";
}

/**
 * Signal words that fit a harm, the most fitting first, after ANSI Z535.6 and ISO 3864-2: NOTICE
 * for damage alone, CAUTION for lesser and WARNING for grave injury. DANGER is for what will kill
 * if it is not avoided; whether it will is the author's to judge.
 */
export function signalsFor(harm: Harm): readonly Signal[] {
  switch (harm) {
    case "damage":
      return ["NOTICE"];
    case "injury":
      return ["CAUTION", "WARNING", "DANGER"];
    case "death":
      return ["WARNING", "DANGER"];
  }
}
