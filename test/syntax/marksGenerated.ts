/** Random part marks, with what they mean, and the places in a text where one may stand. */
import fc from "fast-check";

export interface GeneratedMark {
  /** The text between the brackets. */
  readonly text: string;
  /** As `shortMark` gives it. */
  readonly short: string;
}

const letters = fc.constantFrom("R", "C", "LED", "U", "Q", "XU", "HS");
const number = fc.integer({ min: 1, max: 400 });
const dash = fc.constantFrom("–", "-", "—", "−", "…", "..", " to ", " bis ", " – ");

type Piece = GeneratedMark;

const part: fc.Arbitrary<Piece> = fc
  .record({ letters, number, suffix: fc.constantFrom("", "", "", "A", "B") })
  .map(({ letters, number, suffix }) => same(`${letters}${number}${suffix}`));

const range: fc.Arbitrary<Piece> = fc
  .record({ letters, number, more: fc.integer({ min: 0, max: 30 }), dash, short: fc.boolean() })
  .map(({ letters, number, more, dash, short }) => {
    const [from, to] = [`${letters}${number}`, `${letters}${number + more}`];
    const text = `${from}${dash}${short ? number + more : to}`;
    return { text, short: `${from}..${to}(${more + 1})` };
  });

const carried: fc.Arbitrary<Piece> = fc
  .record({ letters, numbers: fc.array(number, { minLength: 2, maxLength: 4 }) })
  .map(({ letters, numbers }) => ({
    text: `${letters}${numbers.join(", ")}`,
    short: numbers.map((n) => `${letters}${n}`).join(" | "),
  }));

const joined: fc.Arbitrary<Piece> = fc
  .tuple(part, part, fc.constantFrom("+", " + ", " or "))
  .map(([a, b, sign]) => ({
    text: a.text + sign + b.text,
    short: `${a.short}${sign === " or " ? sign : "+"}${b.short}`,
  }));

const set: fc.Arbitrary<Piece> = fc
  .tuple(fc.constantFrom("all", "rest of"), fc.constantFrom("R", "100n", "10 kΩ", "4k7", "LED"))
  .map(([which, of]) => ({
    text: `${which} ${of}`,
    short: `${which === "all" ? "all" : "rest"} ${of}`,
  }));

const amount: fc.Arbitrary<Piece> = fc
  .tuple(
    number,
    fc.constantFrom(" × ", "x ", " x "),
    fc.constantFrom("M3x10", "washer A3", "1N4148"),
  )
  .map(([n, sign, key]) => ({ text: n + sign + key, short: `${n} of ${key}` }));

const role = fc.constantFrom("fit", "later", "place", "insert", "make", "try", "remove");
const value = fc.constantFrom("", "", "", "4k7", "4,7 k", "100 nF 1%");

/** A mark that is beyond doubt. */
export const generatedMark: fc.Arbitrary<GeneratedMark> = fc
  .record({
    role,
    value,
    pieces: fc.array(fc.oneof(part, range, carried, joined, set, amount), {
      minLength: 1,
      maxLength: 4,
    }),
  })
  .map(({ role, value, pieces }) => {
    const head = role === "fit" ? "" : `${role}: `;
    const tail = value && ` = ${value}`;
    return {
      text: head + pieces.map(({ text }) => text).join(", ") + tail,
      short: `${role} ${pieces.map(({ short }) => short).join(" | ")}${tail}`,
    };
  });

function same(text: string): Piece {
  return { text, short: text };
}

/** Writes some characters of a bracket as entities, and some spaces as line breaks where one may be. */
export function disguise(text: string, choice: readonly number[], lineBreak: string): string {
  let index = 0;
  return [...text]
    .map((character, at) => {
      const pick = choice[index++ % choice.length];
      if (pick === 0) return `&#${character.codePointAt(0)};`;
      if (pick === 1) return `&#x${character.codePointAt(0)!.toString(16)};`;
      if (pick === 2 && character === "–") return "&ndash;";
      // Before other signs the next line could open a list or a quote.
      if (pick === 3 && /^ \p{L}/u.test(text.slice(at))) return lineBreak || " ";
      if (pick === 4 && /[-+=,:]/.test(character)) return `\\${character}`;
      return character;
    })
    .join("");
}

/** Where a mark may stand: what is before it, what continues a line inside it, what follows. */
export const PLACES: readonly { before: string; lineBreak: string; after: string }[] = [
  { before: "", lineBreak: "\n", after: "" },
  { before: "# Title\r\n\r\n1. Solder ", lineBreak: "\r\n   ", after: " flat.\r\n" },
  { before: "caf&eacute; \\[ 🔧 *a* ", lineBreak: "\n\t", after: " **b**" },
  { before: "> -\ta\t", lineBreak: "\n>   ", after: "\n> - b" },
  { before: "> 1. > - a\n>    >\n>    >   b ", lineBreak: "\n>    >   ", after: "" },
  { before: "1.\tx\n\t- ", lineBreak: "\n\t  ", after: " and\ttab" },
  { before: "| a | b |\n| --- | --- |\n| &amp; 🔧 | ", lineBreak: "", after: " |\n" },
  { before: "## 🔧 &lt; ", lineBreak: "", after: " ##\n" },
  { before: "**bold ", lineBreak: "\n", after: "**" },
  { before: "[link ", lineBreak: "\n", after: "](x)" },
  { before: "- [ ] task ", lineBreak: "\n  ", after: "\n" },
  { before: "[^1]: note ", lineBreak: "\n    ", after: "\n" },
  { before: "\uFEFFx ", lineBreak: "\n", after: "" },
];
