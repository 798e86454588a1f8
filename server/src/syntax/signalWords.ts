/**
 * Signal words of hazard notes after ANSI Z535.6 and ISO 3864-2, and the words that manuals use for
 * them in German, French, Dutch and Spanish (common practice).
 */

export type Signal = "DANGER" | "WARNING" | "CAUTION" | "NOTICE";

const WORDS: Readonly<Record<string, Signal>> = {
  DANGER: "DANGER",
  WARNING: "WARNING",
  CAUTION: "CAUTION",
  NOTICE: "NOTICE",
  GEFAHR: "DANGER",
  WARNUNG: "WARNING",
  VORSICHT: "CAUTION",
  HINWEIS: "NOTICE",
  AVERTISSEMENT: "WARNING",
  ATTENTION: "CAUTION",
  AVIS: "NOTICE",
  GEVAAR: "DANGER",
  WAARSCHUWING: "WARNING",
  VOORZICHTIG: "CAUTION",
  "LET OP": "NOTICE",
  PELIGRO: "DANGER",
  ADVERTENCIA: "WARNING",
  PRECAUCIÓN: "CAUTION",
  ATENCIÓN: "CAUTION",
  AVISO: "NOTICE",
};

const ALERTS: Readonly<Record<string, Signal>> = { WARNING: "WARNING", CAUTION: "CAUTION" };

const OPENING = /^\s*([\p{Lu} ]+?)\s*(?:[:.!–—-]\s*(.*))?$/su;

/** Reads the bold opening of a hazard note, `WARNING: electric shock.`; undefined when it is none. */
export function readSignal(opening: string): { signal: Signal; hazard: string } | undefined {
  const match = OPENING.exec(opening);
  const signal = match && WORDS[match[1]!.normalize("NFC")];
  if (!signal) return undefined;
  return { signal, hazard: (match[2] ?? "").replace(/[\s.:!]+$/, "") };
}

/** Reads the head of a GitHub alert, `[!WARNING]`; notes, tips and the like are no hazard notes. */
export function readAlert(source: string): Signal | undefined {
  const match = /^\[!([A-Za-z]+)\]/.exec(source);
  return match ? ALERTS[match[1]!.toUpperCase()] : undefined;
}
