/** Colour bands of a resistor, drawn. */
import type { Colour } from "../../trade/marking/colours.ts";

/** In sRGB, told apart on the body's colour; IEC 60062 names the colours and gives no figures. */
const PAINT: { readonly [colour in Colour]: string } = {
  pink: "#f59bb0",
  silver: "#c8ccd0",
  gold: "#b8902a",
  black: "#141414",
  brown: "#7a4a21",
  red: "#cf2a27",
  orange: "#f07f13",
  yellow: "#f6d000",
  green: "#2f8f3e",
  blue: "#1f55b5",
  violet: "#7d3f98",
  grey: "#8a8d90",
  white: "#ffffff",
};

/** Film resistors of 1 % are blue as a rule, of 5 % beige (common practice). */
const BODY = { close: "#a9cbe0", wide: "#e3cda4" };

const FIRST = 20;
const PITCH = 9;
const WIDTH = 5;

/**
 * The resistor as SVG, lying; the band of the tolerance stands apart if there is one. `label` says the
 * colours in words.
 */
export function drawBands(bands: readonly Colour[], hasTolerance: boolean, label: string): string {
  const places = bands.map((_, index) => FIRST + index * PITCH);
  if (hasTolerance && bands.length > 1) places[places.length - 1]! += 4;
  const end = Math.max(FIRST + 4 * PITCH, places.at(-1)! + WIDTH) + 8;
  const body = bands.length > 4 ? BODY.close : BODY.wide;
  const stripes = bands.map((colour, index) => {
    // Yellow and white would vanish on some bodies without an edge.
    return `<path d="M${places[index]} 3h${WIDTH}v14h-${WIDTH}z" fill="${PAINT[colour]}" stroke="#0006" stroke-width=".5"/>`;
  });
  return `<svg class="bands" viewBox="0 0 ${end + 14} 20" width="${Math.round((end + 14) * 1.2)}" height="24" role="img" aria-label="${label}"><path d="M0 10h${end + 14}" stroke="#888" stroke-width="1.5"/><rect x="13" y="3" width="${end - 13}" height="14" rx="6" fill="${body}" stroke="#0006" stroke-width=".5"/>${stripes.join("")}</svg>`;
}
