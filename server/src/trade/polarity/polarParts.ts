/**
 * Which parts have a right way round that their leads or pins do not enforce. Common practice:
 * electrolytic and tantalum capacitors, diodes, LEDs, integrated circuits, batteries and their
 * holders, and relays whose coil is polarised.
 */
import { type PartClass, type PartHints, partClass } from "../partClass.ts";

export type PolarKind =
  | "electrolytic capacitor"
  | "diode"
  | "LED"
  | "integrated circuit"
  | "battery"
  | "relay";

const KINDS: { readonly [part in PartClass]?: PolarKind } = {
  electrolytic: "electrolytic capacitor",
  diode: "diode",
  led: "LED",
  ic: "integrated circuit",
  battery: "battery",
  "battery holder": "battery",
  relay: "relay",
};

/** Capacitors and diodes that take either polarity. */
const UNPOLAR =
  /bi-?polar|non-?polar|un-?polar|\bnp\b|\bbp\b|\bdiac\b|bi-?directional|bidirektional|bidirectionnel|bidireccional|ungepolt|no polari|non polari/i;
/** Only such coils have a plus: latching relays, and those with a diode inside. */
const POLAR_COIL =
  /latching|bistab|polari[sz]|gepolt|polaris|polariz|diode|diodo|stromstoß|monostable polar/i;

/** The kind of polarised part with these letters and words; undefined for any other. */
export function polarKind(letters: string, hints: PartHints): PolarKind | undefined {
  const kind = KINDS[partClass(letters, hints)];
  if (!kind) return undefined;
  const words = [hints.value, hints.description].filter(Boolean).join(" ");
  if (kind === "relay") return POLAR_COIL.test(words) ? kind : undefined;
  return UNPOLAR.test(words) ? undefined : kind;
}
