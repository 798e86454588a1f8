/** A chip is pushed into a socket that is not there yet. */
import type { Guide, Use } from "../model/guide.ts";
import type { Part } from "../model/parts.ts";
import type { Check, Finding } from "./check.ts";
import { cellAt, listedAt, useAt } from "./places.ts";
import { firstWith, inEarlierStep } from "./progress.ts";
import { partName, stepName } from "./words.ts";

export const check: Check = {
  meta: {
    code: "socket-first",
    summary: "A chip is inserted before its socket is fitted.",
    severity: "error",
    source: "common practice",
    tags: ["parts"],
  },
  *unusual(part, uses, guide) {
    const inserted = firstWith(uses, "insert");
    if (!inserted) return;
    const socket = guide.socketOf(part);
    if (socket) yield* ownSocket(part, inserted, socket, guide);
    else if (part.socketLine) yield* sharedDesignator(part, inserted, uses, guide);
  },
};

/** The socket has a designator of its own. */
function* ownSocket(chip: Part, inserted: Use, socket: Part, guide: Guide): Iterable<Finding> {
  const fitted = firstWith(guide.uses(socket), "fit");
  if (fitted) {
    if (inEarlierStep(inserted, fitted, guide.compare.bind(guide))) {
      yield tooEarly(chip, inserted, partName(socket), fitted);
    }
    return;
  }
  if (guide.uses(socket).some((use) => use.item.kind === "choice")) return;
  yield {
    at: useAt(inserted),
    message: () =>
      `${partName(chip)} is inserted in ${stepName(inserted)}, but no step solders its socket ${partName(socket)}. Fit [${socket.name}] in an earlier step.`,
    related: [{ at: listedAt(socket), message: () => `${socket.name} is listed here.` }],
    explains: [socket],
  };
}

/** Socket and chip share the designator: a plain mark solders the socket. */
function* sharedDesignator(
  chip: Part,
  inserted: Use,
  uses: readonly Use[],
  guide: Guide,
): Iterable<Finding> {
  const fitted = firstWith(uses, "fit");
  if (fitted) {
    if (inEarlierStep(inserted, fitted, guide.compare.bind(guide))) {
      yield tooEarly(chip, inserted, "", fitted);
    }
    return;
  }
  const line = chip.socketLine!;
  yield {
    at: useAt(inserted),
    message: () =>
      `${partName(chip)} is inserted in ${stepName(inserted)}, but no step solders its socket. Fit the socket with a plain [${chip.name}] in an earlier step.`,
    related: [
      { at: cellAt(chip.list, line, "designator"), message: () => "The socket is listed here." },
    ],
  };
}

function tooEarly(chip: Part, inserted: Use, socketName: string, fitted: Use): Finding {
  const socket = socketName ? `its socket ${socketName}` : "its socket";
  return {
    at: useAt(inserted),
    message: () =>
      `${partName(chip)} is inserted in ${stepName(inserted)}, but ${socket} is soldered only in ${stepName(fitted)}. Solder the socket first: the heat harms a chip that sits in it.`,
    related: [{ at: useAt(fitted), message: () => `Socket soldered in ${stepName(fitted)}.` }],
  };
}
