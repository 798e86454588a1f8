/** Which socket is for which chip: a socket is named after its chip (XU3), or its line names the chip. */
import { designatorKey, readDesignator } from "../syntax/designators.ts";
import { kindOfLine } from "./partKind.ts";
import type { Part } from "./parts.ts";

/** Looks a designator up on a board. */
type Find = (name: string, board: string) => Part | undefined;

export class SocketPairs {
  readonly #chips = new Map<Part, Part>();
  readonly #sockets = new Map<Part, Part>();

  constructor(parts: readonly Part[], find: Find) {
    for (const socket of parts) {
      if (!canBeSocket(socket)) continue;
      const chip = chipNamedBy(socket, find);
      if (!chip || chip === socket) continue;
      this.#chips.set(socket, chip);
      this.#sockets.set(chip, socket);
    }
  }

  socketOf(chip: Part): Part | undefined {
    return this.#sockets.get(chip);
  }

  chipOf(socket: Part): Part | undefined {
    return this.#chips.get(socket);
  }
}

/** Whether the part can be a socket: of thousands nearly none can, and saying so must cost little. */
function canBeSocket({ name, line, letters }: Part): boolean {
  return name.startsWith("X") || name.startsWith("x") || kindOfLine(line, letters) === "socket";
}

function chipNamedBy(socket: Part, find: Find): Part | undefined {
  const key = designatorKey(socket.name);
  if (key.startsWith("X")) {
    const chip = find(key.slice(1), socket.board);
    if (chip) return chip;
  }
  if (kindOfLine(socket.line, socket.letters) !== "socket") return undefined;
  const { value, description, notes } = socket.line.cells;
  const words = [value, description, notes].map((cell) => cell?.text ?? "").join(" ");
  const chips = words
    .split(/[^\p{L}\p{N}_$]+/u)
    .filter((word) => readDesignator(word))
    .map((word) => find(word, socket.board))
    .filter((part) => part !== undefined);
  const place = socket.line.designators.findIndex((one) => one.name === socket.name);
  return chips[chips.length === socket.line.designators.length ? place : 0];
}
