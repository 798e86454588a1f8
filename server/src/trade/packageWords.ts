/**
 * The look of a part in words, from its footprint's name: for a builder, to whom
 * `R_Axial_DIN0207_L6.3mm_D2.5mm_P10.16mm_Horizontal` says nothing. The naming is that of the KiCad
 * libraries, as in footprintHeight.ts.
 */
import { chipHeight } from "./chipSizes.ts";

/** Words of the names that say how a part lies or is built. */
const WORDS: Readonly<Record<string, string>> = {
  axial: "axial",
  radial: "radial",
  disc: "disc",
  rect: "box",
  horizontal: "lying",
  vertical: "upright",
};

/** Letters of the class, which designator and kind tell, and what only concerns the board's copper. */
const IDLE =
  /^(?:R|C|CP|L|D|LED|F|Q|U|Y|SW|RV|DIN\d{4}|\d{4}Metric|Pad[\d.x]*(?:mm)?|EP[\d.x]*(?:mm)?|HandSolder(?:ing)?|Straight|SOD\d+)$/;

const FIGURE = /^(L|D|W|H|P|Pitch)(\d+(?:\.\d+)?)mm$/;
const PINS = /^(\d{1,2})x(\d{1,3})$/;
const SIZE = /^(\d+(?:\.\d+)?)x(\d+(?:\.\d+)?)mm$/;

/** Longer texts are remarks, which stay as they are. */
const MAX_NAME = 120;

/**
 * `axial, lying, 6.3 mm long, 2.5 mm thick, leads 10.16 mm apart`; `DIP-8, rows 7.62 mm apart`; `chip
 * size 0805`. A name that follows no such pattern is given back without its library.
 */
export function packageWords(footprint: string): string {
  const name = footprint.trim().replace(/^[\w.-]+:(?=\S)/, "");
  const tokens = name.split("_").filter((token) => token !== "");
  if (name.length > MAX_NAME) return name;
  const chip = chipHeight(name, "unknown");
  if (chip) return `chip size ${chip.size}`;
  if (tokens.length < 2 || /\s/.test(name)) return name;
  const look = new Look();
  for (const token of tokens) look.take(token);
  return look.words() || name;
}

/** `PinHeader` and `6mm` as a builder writes them. */
function plain(token: string): string {
  if (/^(?:[A-Z][a-z]+)+$/.test(token)) {
    return token.replace(/(?<=[a-z])(?=[A-Z])/g, " ").toLowerCase();
  }
  return token.replace(/^([\d.]+)mm$/, "$1 mm");
}

/** Gathers what the words of one name tell. */
class Look {
  readonly #named: string[] = [];
  /** In millimetres, by the letter that stands before it. */
  readonly #figures = new Map<string, number>();
  #pins = "";
  #size = "";

  take(token: string): void {
    const figure = FIGURE.exec(token);
    const pins = PINS.exec(token);
    const size = SIZE.exec(token);
    const word = WORDS[token.toLowerCase()];
    if (figure) this.#figures.set(figure[1]![0]!, Number(figure[2]));
    else if (pins) this.#pins = `${Number(pins[1])} × ${Number(pins[2])} pins`;
    else if (size) this.#size = `${Number(size[1])} × ${Number(size[2])} mm`;
    else if (!IDLE.test(token)) this.#named.push(word ?? plain(token));
  }

  words(): string {
    const pitch = this.#figures.get("P");
    const ends = this.#pins === "" ? "leads " : "";
    const told = [
      ...this.#named,
      this.#pins,
      this.#size,
      ...this.#body(),
      pitch === undefined ? "" : `${ends}${pitch} mm apart`,
    ];
    return told.filter((text) => text !== "").join(", ");
  }

  #body(): string[] {
    const [long, across, wide, high] = ["L", "D", "W", "H"].map((one) => this.#figures.get(one));
    const mm = (figure: number | undefined, what: string) =>
      figure === undefined ? "" : `${figure} mm ${what}`;
    if (long !== undefined && wide !== undefined) return [`${long} × ${wide} mm`, mm(high, "high")];
    const isDual = this.#named.some((name) => /^[SPC]?DI[PL]-?\d/.test(name));
    return [
      mm(long, "long"),
      mm(across, long === undefined ? "across" : "thick"),
      isDual && wide !== undefined
        ? `rows ${wide} mm apart`
        : mm(wide, across === undefined ? "wide" : "thick"),
      mm(high, "high"),
    ];
  }
}
