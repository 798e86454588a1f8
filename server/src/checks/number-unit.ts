/** A number and its unit in the text are not written as the SI writes them. */
import type { GuidePiece } from "../model/guide.ts";
import type { Check, Finding } from "./check.ts";
import { replace } from "./places.ts";
import { type LooseUnit, looseUnits } from "./wording/looseUnits.ts";

const WHY: Readonly<Record<LooseUnit["kind"], string>> = {
  space: "a unit stands one space after its number, or the two are read as one word",
  symbol: "the SI writes the unit so, and another spelling may be taken for another unit",
  hyphen: "number and unit symbol are separated by a space, also before a noun",
  zero: "without the zero the point is overlooked, and the value is read ten or a hundred times too large",
  degree: "the degree sign belongs to the C",
};

export const check: Check = {
  meta: {
    code: "number-unit",
    summary: "A number and its unit are not written as the SI writes them.",
    severity: "information",
    source: "NIST SP 811 (2008), 6.1.5, 7.2, 10.5.2",
    late: true,
    tags: ["wording"],
  },
  *piece(piece, guide) {
    for (const block of piece.prose) {
      for (const loose of looseUnits(block, guide.language === "en")) yield finding(piece, loose);
    }
  },
};

function finding(piece: GuidePiece, { span, kind, right }: LooseUnit): Finding {
  return {
    at: { piece, span },
    message: () => `Write "${right}": ${WHY[kind]}.`,
    fixes: [() => replace(piece, span, right, `Write ${right}`, true)],
  };
}
