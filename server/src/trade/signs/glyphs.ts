/**
 * What stands inside a safety sign, as SVG elements in a square of 100 × 100. Our own drawings of
 * the meanings that ISO 7010 lists. `INK` stands for the colour of the picture and `FIELD` for the
 * one behind it; elements without a fill take the ink.
 */

export const GLYPHS = {
  exclamation: `<path d="M45 37h10l-2.5 28h-5z"/><circle cx="50" cy="75" r="5.5"/>`,
  bolt: `<path d="M55 33 38 60h10l-6 22 20-29H51l9-20z"/>`,
  heat: `<path d="M31 76h38v6H31z"/>${wave(39)}${wave(50)}${wave(61)}`,
  skull: `<path d="M50 37c-9 0-14 6-14 13 0 5 2 8 5 10v6h18v-6c3-2 5-5 5-10 0-7-5-13-14-13z"/><circle cx="44.5" cy="52" r="3.5" fill="FIELD"/><circle cx="55.5" cy="52" r="3.5" fill="FIELD"/><path d="M33 70l34 12M67 70 33 82" stroke="INK" stroke-width="5" stroke-linecap="round"/>`,
  flame: `<path d="M51 33c3 9-9 14-13 24-4 11 3 20 12 20s16-8 13-20c-1-4-3-6-3-9-3 2-4 5-4 8-4-6-1-15-5-23z"/><path d="M33 79h34v5H33z"/>`,
  burst: `<path d="M50 37l4 11 10-7-4 12 12 2-11 6 7 11-12-3-1 12-7-10-8 9 1-12-13 2 9-9-10-8 13-1-3-12 9 8z"/>`,
  edge: `<path d="M28 82l10-14 6 9 7-14 7 14 6-9 8 14z"/><path d="M60 44 50 57" stroke="INK" stroke-width="9" stroke-linecap="round"/>`,
  drops: `<path d="M42 38l20 10-4 7-20-10z"/><path d="M56 59c2.5 3 3.5 5 3.5 6.5a3.5 3.5 0 0 1-7 0c0-1.5 1-3.5 3.5-6.5z"/><path d="M31 75h18c1 3 9 3 10 0h10v7H31z"/>`,
  hand: `<path d="M40 36h20v7H40z"/><path d="M50 61 43 51h4v-6h6v6h4z"/><path d="M28 82c2-8 6-12 13-12h25a3 3 0 0 1 0 7H54v5z"/>`,
  rays: `<circle cx="50" cy="60" r="8"/><path d="M50 37v9M50 74v9M27 60h9M64 60h9M34 44l6 6M60 70l6 6M66 44l-6 6M40 70l-6 6" stroke="INK" stroke-width="4.5" stroke-linecap="round"/>`,
  waves: `<path d="M47.5 62h5l3 21h-11z"/><circle cx="50" cy="56" r="5"/><path d="M41 49a12 12 0 0 0 0 16M59 49a12 12 0 0 1 0 16M34 46a19 19 0 0 0 0 24M66 46a19 19 0 0 1 0 24" fill="none" stroke="INK" stroke-width="4" stroke-linecap="round"/>`,
  magnet: `<path d="M36 47h9v18a5 5 0 0 0 10 0V47h9v18a14 14 0 0 1-28 0z"/><path d="M36 54h9M55 54h9" stroke="FIELD" stroke-width="3"/>`,
  battery: `<path d="M38 46h5v-5h6v5h2v-5h6v5h5a4 4 0 0 1 4 4v26a4 4 0 0 1-4 4H38a4 4 0 0 1-4-4V50a4 4 0 0 1 4-4z"/><path d="M37 63h10M53 63h10M58 58v10" stroke="FIELD" stroke-width="5"/>`,
  noise: `<path d="M31 56h8l11-10v32L39 68h-8z"/><path d="M55 54a10 10 0 0 1 0 16M61 49a17 17 0 0 1 0 26" fill="none" stroke="INK" stroke-width="4.5" stroke-linecap="round"/>`,
  glasses: `<path d="M50 17c-20 0-31 13-31 30 0 21 14 37 31 37s31-16 31-37c0-17-11-30-31-30z"/><rect x="25" y="41" width="22" height="16" rx="6" fill="FIELD"/><rect x="53" y="41" width="22" height="16" rx="6" fill="FIELD"/><path d="M45 46h10M17 45h10M73 45h10" stroke="FIELD" stroke-width="4"/>`,
  order: `<path d="M43 20h14l-4 38h-6z"/><circle cx="50" cy="72" r="7.5"/>`,
} as const;

export type Glyph = keyof typeof GLYPHS;

/** Heat that rises from a surface at `x`. */
function wave(x: number): string {
  return `<path d="M${x} 71c-5-5 5-9 0-14s5-8 0-13" fill="none" stroke="INK" stroke-width="4.5" stroke-linecap="round"/>`;
}
