/** A part is fitted on a board and its height is not known, so the height checks leave it out. */
import type { Part } from "../model/parts.ts";
import type { Check } from "./check.ts";
import { cellAt } from "./places.ts";
import { listNames } from "./words.ts";

export const check: Check = {
  meta: {
    code: "unknown-height",
    summary: "The height of a fitted part is not known.",
    severity: "information",
    source: "common practice",
    tags: ["list"],
  },
  *line(line, list, guide) {
    const unknown = guide
      .partsOf(line)
      .filter(
        (part) =>
          !part.height &&
          !part.offBoard &&
          guide.uses(part).some(({ role }) => role === "fit" || role === "place"),
      );
    if (unknown.length === 0) return;
    yield {
      at: cellAt(list, line, "designator"),
      message: () =>
        `The body height of ${listNames(unknown)} is not known, so the height checks leave ${unknown.length > 1 ? "them" : "it"} out. Give it in the guide's front matter: \`heights: { ${keyFor(unknown[0]!)}: 5 mm }\`, with the real figure; or list the part under \`off-board\`.`,
    };
  },
};

/** The package where it can stand as a key as it is and names one size, for it serves other parts too. */
function keyFor(part: Part): string {
  const text = part.line.cells.package?.text ?? "";
  return /^[A-Za-z][\w.-]{0,30}$/.test(text) && !MANNER.test(text) ? text : part.name;
}

/** How a part is built or how far its leads are apart, and nothing of its size: `radial`, `RM5`. */
const MANNER = /^(?:radial|axial|tht|th|smd|smt|pth|(?:rm|p|pitch)[-_ ]?\d[\d.]*(?:mm)?)$/i;
