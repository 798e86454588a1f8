/** Usual diameters of leads by package, in m: what a bend is measured against. */

/**
 * In mm; of flat leads the thickness, which is what bends. Axial bodies after the generator
 * parameters of kicad-3d-models-in-freecad; the rest from memory of makers' outlines.
 */
const LEADS: readonly (readonly [RegExp, number])[] = [
  [/DIN0204|DIN0207|DIN0309/i, 0.6],
  [/DIN0411|DIN0414|DIN0516|DIN0614|DIN0617/i, 0.8],
  [/DIN0918|DIN0922/i, 0.8],
  [/DO-?35|SOD-?27/i, 0.5],
  [/DO-?41|SOD-?81|DO-?204AL/i, 0.8],
  [/DO-?15(?!\d)/i, 0.8],
  [/DO-?201/i, 1.3],
  [/TO-?92(?!\d)/i, 0.45],
  [/TO-?220(?!\d)/i, 0.5],
  [/TO-?126(?!\d)|TO-?225/i, 0.5],
  [/TO-?247(?!\d)|TO-?3-?P(?!\d)/i, 0.6],
  [/(?<![a-z])LEDs?(?![a-z])|light-emitting/i, 0.5],
  [/CP_Radial|C_Radial|C_Disc|C_Rect/i, 0.5],
];

/** Package name and description together; undefined where neither tells. */
export function leadDiameter(text: string): number | undefined {
  const mm = LEADS.find(([name]) => name.test(text))?.[1];
  return mm === undefined ? undefined : mm / 1000;
}

/** Diodes with a glass body, which cracks when a lead is bent close to it. */
export function isGlassDiode(text: string): boolean {
  return /DO-?35|DO-?34|SOD-?27|SOD-?68|MELF|glass|Glas|verre|vidrio/i.test(text);
}
