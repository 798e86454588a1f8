/** How thick things are that a screw clamps. Results in m. */

/** No figure of a size such as 50 × 40 × 20 mm. */
const FIGURE = String.raw`(?<![×x] ?)(?<![\d.,])(\d{1,2}(?:[.,]\d{1,2})?) ?mm`;
/** `base 3 mm thick`, `thickness 1.6 mm`, `flange 1 mm`, `1,6 mm FR4`, in five languages. */
const SAID: readonly RegExp[] = [
  new RegExp(`${FIGURE} (?:thick|dick|stark|d['’ ]épaisseur|dik|de (?:espesor|grosor))`, "iu"),
  new RegExp(
    `(?:thickness|flange|wall|Stärke|Dicke|Bund|Wandstärke|épaisseur|collerette|dikte|flens|espesor|grosor|brida)[ :=]*(?:of |von |de |van )?${FIGURE}`,
    "iu",
  ),
  new RegExp(`${FIGURE} (?:FR-?4|alumin|steel|Stahl|Alu|acier|staal|acero)`, "iu"),
  new RegExp(`(?:FR-?4|alumin\\p{L}*|steel|Stahlblech|acier|staal|acero),? ${FIGURE}`, "iu"),
  new RegExp(`(?:mica|Glimmer|insulator|pad)[^.;]*?${FIGURE}`, "iu"),
];

/** The thickness that a description gives; undefined where it gives none. */
export function thicknessIn(text: string): number | undefined {
  for (const pattern of SAID) {
    const match = pattern.exec(text);
    if (match) return Number(match[1]!.replace(",", ".")) / 1000;
  }
  return undefined;
}

/**
 * What a screw passes through in a power package: a tab, or the whole body. Least of the makers'
 * outlines in mm, from memory of JEDEC TO-220, TO-247, TO-126.
 */
const PACKAGES: readonly (readonly [RegExp, number])[] = [
  [/(?<![a-z\d])TO-?220(?:F|FP)(?![a-z])/i, 2.5],
  [/(?<![a-z\d])TO-?220(?!\d)/i, 1.2],
  [/(?<![a-z\d])(?:TO-?247|TO-?3-?P)(?!\d)/i, 4.7],
  [/(?<![a-z\d])TO-?264(?!\d)/i, 4.8],
  [/(?<![a-z\d])(?:TO-?126|TO-?225|SOT-?32)(?!\d)/i, 2.4],
];

/** The least thickness of a package where its screw passes; undefined for one without a hole. */
export function packageThickness(text: string): number | undefined {
  const mm = PACKAGES.find(([name]) => name.test(text))?.[1];
  return mm === undefined ? undefined : mm / 1000;
}
