/** All parts and hardware of a kit, from the lists of its boards and what the guide says of them. */
import { readValue, sameValue } from "../quantity/readValue.ts";
import { designatorKey, lettersOfName, readDesignator } from "../syntax/designators.ts";
import type { FrontMatter } from "../syntax/frontMatter.ts";
import { HardwareKeys, hardwareNames } from "./hardwareKeys.ts";
import { HeightNotes } from "./heightNotes.ts";
import type { ListedDesignator, ListLine, PartsList } from "./list/partsList.ts";
import { kindOfLine } from "./partKind.ts";
import type { Hardware, Part } from "./parts.ts";
import { Slips } from "./slips.ts";
import { SocketPairs } from "./socketPairs.ts";

/** A list and the board that the guide's `parts` key ties it to. */
export interface BoardList {
  readonly board: string | undefined;
  readonly list: PartsList;
}

/** What the guide's front matter adds to the lists. */
export type KitNotes = Pick<FrontMatter, "heights" | "offBoard" | "spares">;

export interface Lookup {
  readonly part: Part | undefined;
  /** Several boards have the designator and nothing says which is meant. */
  readonly doubtful: boolean;
}

export class Kit {
  readonly lists: readonly PartsList[];
  readonly parts: readonly Part[];
  readonly hardware: readonly Hardware[];
  readonly boards: readonly string[];
  readonly #byKey = new Map<string, Part[]>();
  readonly #keys: HardwareKeys;
  readonly #sets = new Map<string, readonly Part[]>();
  readonly #byLine = new Map<ListLine, Part[]>();
  #slips: Slips | undefined;
  #socketPairs: SocketPairs | undefined;

  constructor(lists: readonly BoardList[], notes: KitNotes) {
    this.lists = lists.map((entry) => entry.list);
    this.boards = boardsOf(lists);
    const heights = new HeightNotes(notes);
    const parts: Part[] = [];
    const lines: { line: ListLine; list: PartsList }[] = [];
    for (const { list, board } of lists) {
      for (const line of list.lines) {
        if (line.designators.length === 0) lines.push({ line, list });
        const name = line.board ?? board ?? "";
        for (const listed of line.designators)
          this.#add(parts, { list, line, listed }, name, heights);
      }
    }
    this.parts = parts;
    const names = hardwareNames(lines.map(({ line }) => line));
    this.hardware = lines.map(({ line, list }, index) =>
      hardwareOf(parts.length + index, names[index]!, line, list, notes),
    );
    this.#keys = new HardwareKeys(this.hardware);
    for (const part of parts) {
      const siblings = this.#byLine.get(part.line);
      if (siblings) siblings.push(part);
      else this.#byLine.set(part.line, [part]);
    }
  }

  /** Parts of a line, in the order of its designators. */
  partsOf(line: ListLine): readonly Part[] {
    return this.#byLine.get(line) ?? [];
  }

  /**
   * The part of that name. `board` is what the mark itself says and is binding; `stageBoard` holds
   * for bare names of its stage. Without either, a name that several boards have means the first.
   */
  find(name: string, board?: string, stageBoard?: string): Lookup {
    const named = this.#named(name);
    const wanted = board ?? stageBoard;
    if (wanted !== undefined && this.boards.length > 0) {
      const part = named.find((candidate) => sameName(candidate.board, wanted));
      return { part, doubtful: false };
    }
    return { part: named[0], doubtful: named.some((part) => part.board !== named[0]!.board) };
  }

  /** Hardware lines that fit the key equally well. */
  findHardware(key: string): readonly Hardware[] {
    return this.#keys.find(key);
  }

  /** Parts of a class (`R`) or of a value (`100n`), in the order of the lists. */
  partsOfSet(of: string): readonly Part[] {
    const known = this.#sets.get(of);
    if (known) return known;
    const letters = of.trim().toUpperCase();
    const ofClass = this.parts.filter((part) => part.letters.toUpperCase() === letters);
    const found = ofClass.length > 0 ? ofClass : this.#partsOfValue(of);
    this.#sets.set(of, found);
    return found;
  }

  /** Up to three listed designators one slip away, likeliest first. */
  nearest(name: string, board?: string): readonly string[] {
    const found: string[] = [];
    this.#slips ??= new Slips(this.#byKey.keys());
    for (const slip of this.#slips.of(designatorKey(name))) {
      const part = this.#byKey.get(slip)?.find((one) => board === undefined || one.board === board);
      if (part && !found.includes(part.name)) found.push(part.name);
      if (found.length === 3) break;
    }
    return found;
  }

  socketOf(chip: Part): Part | undefined {
    return this.#sockets().socketOf(chip);
  }

  chipOf(socket: Part): Part | undefined {
    return this.#sockets().chipOf(socket);
  }

  #named(name: string): readonly Part[] {
    const key = designatorKey(name);
    const exact = this.#byKey.get(key);
    if (exact) return exact;
    // U3A and U3B are sections of U3 (ASME Y14.44-2008 2.1.3).
    const section = readDesignator(key);
    return section?.suffix ? (this.#byKey.get(section.letters + section.digits) ?? []) : [];
  }

  #add(parts: Part[], source: Source, board: string, heights: HeightNotes): void {
    const key = designatorKey(source.listed.name);
    const named = this.#byKey.get(key);
    const before = named?.findIndex((part) => sameName(part.board, board)) ?? -1;
    if (before >= 0) {
      const merged = mergeListings(named![before]!, source, board, heights);
      parts[merged.id] = merged;
      named![before] = merged;
      return;
    }
    const part = partOf(parts.length, source, board, heights);
    parts.push(part);
    if (named) named.push(part);
    else this.#byKey.set(key, [part]);
  }

  #partsOfValue(of: string): readonly Part[] {
    return this.parts.filter((part) => {
      if (!part.line.value) return foldText(part.line.cells.value?.text) === foldText(of);
      const wanted = readValue(of, part.letters).value;
      return wanted !== undefined && sameValue(wanted, part.line.value);
    });
  }

  #sockets(): SocketPairs {
    this.#socketPairs ??= new SocketPairs(this.parts, (name, board) => this.find(name, board).part);
    return this.#socketPairs;
  }
}

interface Source {
  readonly list: PartsList;
  readonly line: ListLine;
  readonly listed: ListedDesignator;
}

function partOf(id: number, source: Source, board: string, heights: HeightNotes): Part {
  const { list, line, listed } = source;
  const letters = lettersOfName(listed.name);
  const height = heights.of(listed.name, letters, line);
  const part: { -readonly [Key in keyof Part]: Part[Key] } = {
    kind: "part",
    id,
    name: listed.name,
    board,
    letters,
    list,
    line,
    listed,
    fitted: line.fitted,
    optional: line.optional,
    offBoard: heights.isOffBoard(listed.name),
  };
  // Set one by one: spreading optional properties costs much for thousands of parts.
  if (height) part.height = height;
  if (line.side) part.side = line.side;
  return part;
}

/**
 * One designator on two lines: a chip and its socket are one part; of two variants the fitted one
 * counts; otherwise the first line counts and the reader has reported the second.
 */
function mergeListings(first: Part, source: Source, board: string, heights: HeightNotes): Part {
  const second = partOf(first.id, source, board, heights);
  const firstIsSocket = kindOfLine(first.line, first.letters) === "socket";
  const secondIsSocket = kindOfLine(second.line, second.letters) === "socket";
  if (firstIsSocket && !secondIsSocket) return { ...second, socketLine: first.line };
  if (secondIsSocket && !firstIsSocket) return { ...first, socketLine: second.line };
  return !first.fitted && second.fitted ? second : first;
}

function hardwareOf(
  id: number,
  name: string,
  line: ListLine,
  list: PartsList,
  notes: KitNotes,
): Hardware {
  const hardware: Hardware = {
    kind: "hardware",
    id,
    name,
    list,
    line,
    ...(line.quantity !== undefined && { supplied: line.quantity }),
    ...(line.metres !== undefined && { metres: line.metres }),
    spare: line.spare ?? 0,
  };
  const own = new HardwareKeys([hardware]);
  const spares = notes.spares.find((entry) => own.find(entry.name).length > 0);
  return spares ? { ...hardware, spare: spares.value } : hardware;
}

function boardsOf(lists: readonly BoardList[]): readonly string[] {
  const boards = new Set<string>();
  for (const { board, list } of lists) {
    if (board) boards.add(board);
    for (const line of list.lines) if (line.board) boards.add(line.board);
  }
  return [...boards];
}

function sameName(a: string, b: string): boolean {
  return a.toLowerCase() === b.toLowerCase();
}

function foldText(text: string | undefined): string {
  return (text ?? "").toLowerCase().replace(/\s+/g, "");
}
