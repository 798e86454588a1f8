/** The file of a picture is missing, or the picture has no text that stands for it. */
import type { GuidePiece } from "../model/guide.ts";
import type { PictureFact } from "../syntax/facts.ts";
import type { Check, Finding } from "./check.ts";

export const check: Check = {
  meta: {
    code: "step-picture",
    summary: "A picture's file is missing, or the picture has no alternative text.",
    severity: "warning",
    source: "WCAG 2.2, success criterion 1.1.1; common practice",
    tags: ["wording"],
  },
  *piece(piece) {
    for (const fact of piece.facts.facts) {
      if (fact.kind === "picture" && fact.alt.trim() === "") yield withoutText(piece, fact);
    }
  },
  *guide(guide) {
    for (const { piece, fact } of guide.pictures()) {
      const { target } = fact;
      const url = "url" in target ? target.url : piece.page.addresses.get(target.label);
      if (url !== undefined && guide.isMissingPicture(piece.page, url))
        yield missing(piece, fact, url);
    }
  },
};

function missing(piece: GuidePiece, { span }: PictureFact, url: string): Finding {
  return {
    at: { piece, span },
    message: () =>
      `There is no file \`${url}\`, so the page shows a gap where the reader should see. The path counts from the folder of this page; capitals count too.${codedSigns(url)}`,
  };
}

/** In an address these signs begin something else than a name. */
function codedSigns(url: string): string {
  const hints = [...url.matchAll(/[#?]/g)].map(
    ([sign]) => `\`${sign}\` is written \`${encodeURIComponent(sign)}\``,
  );
  return hints.length === 0 ? "" : ` In an address a ${[...new Set(hints)].join(", a ")}.`;
}

function withoutText(piece: GuidePiece, { span }: PictureFact): Finding {
  return {
    at: { piece, span },
    severity: "information",
    message: () =>
      "This picture has no alternative text: whoever cannot see it, on a bad print or with a screen reader, learns nothing. Say in the square brackets what it shows.",
  };
}
