/** Random guides made of fragments that have broken parsers before, and random edits to them. */
import fc from "fast-check";

const FRAGMENTS = [
  "## Stage\n",
  "### Part\n",
  "# Title\n",
  "Setext\n---\n",
  "Setext [R9]\n===\n",
  "1. Solder [R1–R4].\n",
  "2. Fit [C1, 3 = 100n]\n",
  "3. ",
  "10) Turn {0.5 N·m}.\n",
  "   - bullet [Q1]\n",
  "   1. sub-step [R7]\n",
  "   continued [later: K2]\n",
  "- [ ] task [D1]\n",
  "* [J1]\n",
  "> **WARNING: hot surface.** It burns.\n",
  "> [!CAUTION]\n> Mind.\n",
  "> 1. quoted [R5]\n",
  "| Part | Step |\n| --- | --- |\n| [R6] | x |\n",
  "```\n",
  "~~~\n# no\n~~~\n",
  "<!-- allow height-order: so -->\n",
  "   <!-- allow height-order: so -->\n",
  "<!--\n",
  "-->\n",
  "<div>\n",
  "    1. indented\n",
  "\t2. tabbed [R8]\n",
  "Text R3 and R4, [R2], *[R1]*, [R1\nR2].\n",
  "[R1](x) ![R1](y) [^1] [R1][R2]\n",
  "{VCC = 13.8 V ± 10 %} {read V(TP1) > 5 V}\n",
  "{VCC} {2 * VCC * Iq = 24 W}\n",
  "{VCC = 12 V} {Iq = 45 mA ± 5 %}\n",
  "{P(R1) = Iq^2 * R1 = 9.5 W} {V(TP1) = VCC / 2}\n",
  "{a = b + 1 V} {b = 2 * c} {c = VCC - V(R3)}\n",
  "{V(R3) = a / 2} {c = 3 V}\n",
  "{read V(TP1) = 9 V ± 5 %} {read c = 1 V … 2 V} {VC + 1 A}\n",
  "Solder [R1, R2 and R3.\n",
  "> [later: K2 and\n",
  "Solder R5, R6].\n",
  "&amp; \\[R1] &#91;R2] 😀 [R3]\n",
  "\n",
  "\n\n",
  "\r\n",
  " ",
  "[",
  "]",
  "{",
  "}",
  "*",
  "_",
  "~",
  "`",
  "#",
  "1.",
  "|",
];

export const hostileText = fc
  .array(fc.constantFrom(...FRAGMENTS), { maxLength: 25 })
  .map((fragments) => fragments.join(""));

export interface Edit {
  /** Place as a share of the text. */
  readonly at: number;
  readonly remove: number;
  readonly insert: string;
}

export function editsOf(most: number): fc.Arbitrary<Edit[]> {
  const edit = fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    remove: fc.oneof(fc.constant(0), fc.nat(3), fc.nat(60)),
    insert: fc.oneof(
      fc.constant(""),
      fc.constantFrom("R", "1", " ", "\n", ...FRAGMENTS),
      fc.array(fc.constantFrom(...FRAGMENTS), { maxLength: 3 }).map((some) => some.join("")),
    ),
  });
  return fc.array(edit, { minLength: 1, maxLength: most });
}
