/**
 * Safety signs after ISO 7010 as SVG. Shapes and colours follow ISO 3864-1: a warning is a yellow
 * triangle with a black edge, a mandatory action a blue disc. The pictures are our own.
 */
import { GLYPHS, type Glyph } from "./glyphs.ts";

/** Registered signs in use here, with their referents in our own words (ISO 7010:2019). */
const SIGNS = {
  W001: { meaning: "general warning", glyph: "exclamation" },
  W002: { meaning: "explosive material", glyph: "burst" },
  W005: { meaning: "non-ionizing radiation", glyph: "waves" },
  W006: { meaning: "magnetic field", glyph: "magnet" },
  W012: { meaning: "electricity", glyph: "bolt" },
  W016: { meaning: "toxic material", glyph: "skull" },
  W017: { meaning: "hot surface", glyph: "heat" },
  W021: { meaning: "flammable material", glyph: "flame" },
  W022: { meaning: "sharp element", glyph: "edge" },
  W023: { meaning: "corrosive substance", glyph: "drops" },
  W024: { meaning: "crushing of hands", glyph: "hand" },
  W026: { meaning: "battery charging", glyph: "battery" },
  W027: { meaning: "optical radiation", glyph: "rays" },
  W038: { meaning: "sudden loud noise", glyph: "noise" },
  M001: { meaning: "general mandatory action", glyph: "order" },
  M004: { meaning: "wear eye protection", glyph: "glasses" },
} as const satisfies Readonly<Record<`${"W" | "M"}${number}`, { meaning: string; glyph: Glyph }>>;

export type SignCode = keyof typeof SIGNS;

export const SIGN_CODES = Object.keys(SIGNS) as readonly SignCode[];

/**
 * RAL 1003, 9004, 5005 and 9003, which ISO 3864-4 gives for safety yellow, black, blue and white,
 * in sRGB as colour charts commonly show them; RAL itself gives no sRGB figures.
 */
const YELLOW = "#f9a800";
const BLACK = "#282828";
const BLUE = "#005387";
const WHITE = "#f4f4f4";

/** What the sign stands for, such as "hot surface". */
export function signMeaning(code: SignCode): string {
  return SIGNS[code].meaning;
}

/**
 * The sign as an SVG document, one line of ASCII without any reference. `size`, its width and height
 * in pixels, is for where nothing else sets them; `label`, plain ASCII, for readers of another language.
 */
export function signSvg(
  code: SignCode,
  { size, label }: { readonly size?: number; readonly label?: string } = {},
): string {
  const { meaning, glyph } = SIGNS[code];
  const isWarning = code.startsWith("W");
  const [ink, field] = isWarning ? [BLACK, YELLOW] : [WHITE, BLUE];
  const picture = GLYPHS[glyph].replaceAll("INK", ink).replaceAll("FIELD", field);
  const shape = isWarning ? triangle(ink, field) : disc(field);
  const sized = size === undefined ? "" : ` width="${size}" height="${size}"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100"${sized} role="img"><title>${label ?? `${code}: ${meaning}`}</title>${shape}<g fill="${ink}">${picture}</g></svg>`;
}

/** The black edge lies inside the triangle; a thin yellow rim parts it from dark ground. */
function triangle(ink: string, field: string): string {
  const path = "M50 9 94 87H6z";
  return `<path d="${path}" fill="${field}" stroke="${field}" stroke-width="10" stroke-linejoin="round"/><path d="${path}" fill="${field}" stroke="${ink}" stroke-width="6" stroke-linejoin="round"/>`;
}

function disc(field: string): string {
  return `<circle cx="50" cy="50" r="49" fill="${field}"/>`;
}
