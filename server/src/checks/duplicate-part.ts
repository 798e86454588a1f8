/** A part that two marks fit. */
import type { Use } from "../model/guide.ts";
import type { Part } from "../model/parts.ts";
import type { Check, Finding, Fix } from "./check.ts";
import { replace, textAt, useAt } from "./places.ts";
import { isFitting } from "./progress.ts";
import { partName, stepName } from "./words.ts";

export const check: Check = {
  meta: {
    code: "duplicate-part",
    summary: "A part is fitted twice.",
    severity: "error",
    source: "common practice",
    tags: ["parts"],
  },
  *unusual(part, uses) {
    let first: Use | undefined;
    let chip: Use | undefined;
    for (const use of uses) {
      if (use.role === "remove") {
        first = undefined;
        chip = undefined;
      } else if (!isFitting(use)) {
      } else if (!first) {
        first = use;
      } else if (namesSections(first, use)) {
      } else if (!chip && goesIntoSocket(part, first, use)) {
        chip = use;
      } else {
        yield fittedTwice(part, first, use);
      }
    }
  },
};

/**
 * Socket and chip may share a designator: the socket is soldered, then the chip pushed in.
 * Where the list has a line for the socket, `socket-first` tells of the wrong order.
 */
function goesIntoSocket(part: Part, first: Use, second: Use): boolean {
  if (first.role === "insert" && second.role === "insert") return false;
  return part.socketLine !== undefined || (first.role === "fit" && second.role === "insert");
}

/** `[U3A, U3B]` and `[U3A–U3D]` name sections of one part (ASME Y14.44-2008 2.1.3). */
function namesSections(first: Use, second: Use): boolean {
  // Steps of the same words share their facts, so only the mark tells them apart.
  if (first.resolved !== second.resolved) return false;
  if (first.item === second.item) return true;
  const [a, b] = [first.item, second.item];
  return a.kind === "part" && b.kind === "part" && a.name.toUpperCase() !== b.name.toUpperCase();
}

function fittedTwice(part: Part, first: Use, second: Use): Finding {
  return {
    at: useAt(second),
    message: () => {
      const name = partName(part);
      if (first.step === second.step) {
        return `${name} is named twice in ${stepName(second)}. The kit has one ${name}: take one of the two out, or write the designator that was meant.`;
      }
      return `${name} is fitted here in ${stepName(second)}, but ${stepName(first)} has fitted it already. Take it out of one of the two, or write the designator that was meant.`;
    },
    related: [{ at: useAt(first), message: () => `First fitted in ${stepName(first)}.` }],
    fixes: isWholeSet(second) ? [() => takeTheRest(second)] : [],
  };
}

function isWholeSet(use: Use): boolean {
  return use.item.kind === "set" && use.item.which === "all";
}

/** `all R` becomes `rest of R`, which leaves out what earlier steps have fitted. */
function takeTheRest(use: Use): Fix | undefined {
  const written = textAt(use.resolved.piece, use.item.span);
  const all = /\ball\b/i.exec(written);
  if (!all) return undefined;
  const start = use.item.span.start + all.index;
  return replace(
    use.resolved.piece,
    { start, end: start + all[0].length },
    "rest of",
    'Write "rest of" instead of "all"',
  );
}
