/** Lengths as a front matter states them: `11 mm`, `0.43 in`, with a point or a decimal comma. */

/** Millimetres by unit; the inch is 25.4 mm exactly (ISO 80000-3, international inch). */
const UNITS: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: 25.4,
  '"': 25.4,
  mil: 0.0254,
};

const LENGTH = /^(\d+(?:[.,]\d+)?|[.,]\d+)\s*(.*)$/;

/** The length in mm; `unit` is empty for a bare number, which is taken as mm. */
export function readLength(text: string): { mm: number; unit: string } | undefined {
  const match = LENGTH.exec(text.trim());
  if (!match) return undefined;
  const unit = match[2]!.trim();
  const factor = unit === "" ? 1 : UNITS[unit];
  const amount = Number(match[1]!.replace(",", "."));
  if (factor === undefined || !(amount > 0)) return undefined;
  return { mm: Number((amount * factor).toPrecision(12)), unit };
}
