/** A part is taller than the room above its board. */
import type { Guide, ResolvedItem, ResolvedMark } from "../model/guide.ts";
import type { Part, Supply } from "../model/parts.ts";
import type { Entry } from "../syntax/frontMatter.ts";
import type { Check, Finding } from "./check.ts";
import { listNames, partName } from "./words.ts";

export const check: Check = {
  meta: {
    code: "too-tall",
    summary: "A part is taller than the room above its board.",
    severity: "error",
    source: "common practice",
    tags: ["order"],
  },
  *mark(resolved, guide) {
    const { role } = resolved.mark;
    if (guide.frontMatter.clearance.length === 0 || (role !== "fit" && role !== "insert")) return;
    for (const item of resolved.items) yield* tooTall(resolved, item, guide);
  },
};

function* tooTall(resolved: ResolvedMark, item: ResolvedItem, guide: Guide): Iterable<Finding> {
  const inSocket = resolved.mark.role === "insert";
  for (const room of guide.frontMatter.clearance) {
    const parts = item.supplies.filter((supply): supply is Part => {
      if (!isAbove(supply, room, guide)) return false;
      const height = heightOf(supply, inSocket, guide);
      return height !== undefined && height > room.value;
    });
    if (parts.length > 0) yield finding(resolved, item, parts, room, guide);
  }
}

/** Whether the supply stands on the board that the clearance is given for. */
function isAbove(supply: Supply, room: Entry<number>, guide: Guide): supply is Part {
  if (supply.kind !== "part" || supply.offBoard || supply.side === "bottom") return false;
  return roomOf(supply, guide) === room;
}

/** A board's own clearance goes before that of all boards; a lone board needs no name. */
function roomOf(part: Part, guide: Guide): Entry<number> | undefined {
  const { clearance } = guide.frontMatter;
  if (guide.boards.length === 0) return clearance[0];
  const board = part.board.toLowerCase();
  return (
    clearance.find(({ name }) => name.toLowerCase() === board && name !== "") ??
    clearance.find(({ name }) => name === "")
  );
}

/** A chip stands on its socket. */
function heightOf(part: Part, inSocket: boolean, guide: Guide): number | undefined {
  if (!part.height) return undefined;
  const socket = inSocket ? guide.socketOf(part)?.height : undefined;
  return part.height.mm + (socket?.mm ?? 0);
}

function finding(
  resolved: ResolvedMark,
  item: ResolvedItem,
  parts: readonly Part[],
  room: Entry<number>,
  guide: Guide,
): Finding {
  const inSocket = resolved.mark.role === "insert";
  const heights = parts.map((part) => heightOf(part, inSocket, guide)!);
  const tallest = parts[heights.indexOf(Math.max(...heights))]!;
  return {
    at: { piece: resolved.piece, span: item.item.span },
    message: () => {
      const socket = inSocket ? guide.socketOf(tallest) : undefined;
      const mm = millimetres(heightOf(tallest, inSocket, guide)!);
      const from = `by ${tallest.height!.from}${socket?.height ? ` and its socket ${partName(socket)}` : ""}`;
      const verb = parts.length > 1 ? "are" : "is";
      const most = parts.length > 1 ? "up to " : "";
      const board = room.name ? ` above the board ${room.name}` : " above the board";
      return `${listNames(parts)} ${verb} ${most}${mm} high (${from}), but only ${millimetres(room.value)} fit${board}. The lid or the next board will not go on. Choose a lower part, lay it flat and give its height under \`heights\`, or correct \`clearance\`.`;
    },
    // The front matter may move while the mark stays as it is.
    get related() {
      const entry = guide.frontMatter.clearance.find(({ name }) => name === room.name);
      if (!entry) return [];
      const at = { uri: guide.pages[0]!.uri, span: entry.span };
      return [{ at, message: () => `The clearance is ${millimetres(room.value)}.` }];
    },
  };
}

function millimetres(mm: number): string {
  return `${Number(mm.toFixed(2))} mm`;
}
