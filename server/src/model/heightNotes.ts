/**
 * Body heights, and the parts that are off the board, as the guide's front matter gives them; where it
 * says nothing, the list and the usual heights of the trade.
 */
import {
  designatorKey,
  expandRange,
  lettersOfName,
  readDesignator,
} from "../syntax/designators.ts";
import type { FrontMatter } from "../syntax/frontMatter.ts";
import { bodyHeight } from "../trade/bodyHeight.ts";
import { wordedHeight } from "../trade/wordedHeight.ts";
import type { ListLine, Meaning } from "./list/partsList.ts";
import type { Height } from "./parts.ts";

/** Where a line speaks of its parts in words. */
const REMARKS: readonly Meaning[] = ["notes", "description", "value", "package"];

export class HeightNotes {
  readonly #byPart = new Map<string, number>();
  readonly #byPackage: { name: string; mm: number }[] = [];
  readonly #offBoard = new Set<string>();
  readonly #usual = new Map<ListLine, Height | undefined>();

  constructor(notes: Pick<FrontMatter, "heights" | "offBoard">) {
    for (const { name, value } of notes.heights) {
      const parts = namesOf(name);
      for (const part of parts) this.#byPart.set(designatorKey(part), value);
      this.#byPackage.push({ name: name.toLowerCase(), mm: value });
    }
    // The longest name is the most exact one.
    this.#byPackage.sort((a, b) => b.name.length - a.name.length);
    for (const { value } of notes.offBoard) {
      for (const part of namesOf(value)) this.#offBoard.add(designatorKey(part));
    }
  }

  isOffBoard(name: string): boolean {
    return this.#offBoard.size > 0 && this.#offBoard.has(designatorKey(name));
  }

  of(name: string, letters: string, line: ListLine): Height | undefined {
    const own = this.#byPart.size > 0 ? this.#byPart.get(designatorKey(name)) : undefined;
    if (own !== undefined) return { mm: own, from: "the guide's heights" };
    if (!this.#usual.has(line)) this.#usual.set(line, this.#ofLine(letters, line));
    return this.#usual.get(line);
  }

  /**
   * What someone has written of these very parts comes before the footprint: its figures are exact, but
   * those of the pattern on the board, and the part in the box is often another make.
   */
  #ofLine(letters: string, line: ListLine): Height | undefined {
    const footprint = line.cells.package?.text ?? "";
    const folded = footprint.toLowerCase().replace(/^[^:]*:/, "");
    const noted = this.#byPackage.find(({ name }) => folded !== "" && folded.startsWith(name));
    if (noted) return { mm: noted.mm, from: `the guide's heights for ${footprint}` };
    if (line.height !== undefined) return { mm: line.height, from: "the parts list" };
    const worded = wordedHeight(REMARKS.map((meaning) => line.text(meaning)));
    if (worded) return { mm: worded.mm, from: `"${worded.words}" in the parts list` };
    return bodyHeight({
      letters,
      ...(line.cells.value && { value: line.cells.value.text }),
      ...(footprint && { package: footprint }),
      ...(line.cells.description && { description: line.cells.description.text }),
    });
  }
}

/** The body height of a line's parts where no guide says anything of heights. */
export function heightOfLine(line: ListLine): Height | undefined {
  const name = line.designators[0]?.name;
  if (name === undefined) return undefined;
  return new HeightNotes({ heights: [], offBoard: [] }).of(name, lettersOfName(name), line);
}

/** Designators of a single name or a range such as `S1–S3`. */
export function namesOf(text: string): readonly string[] {
  const ends = text.split(/\s*(?:–|—|-|…|\.\.\.?|\bto\b)\s*/);
  const first = readDesignator(ends[0]!.trim());
  if (ends.length === 2 && first) {
    const last = readDesignator(ends[1]!.trim()) ?? (/^\d+$/.test(ends[1]!) ? ends[1]! : undefined);
    const range = last && expandRange(first, last, 10_000);
    if (range) return range.names;
  }
  return [text.trim()];
}
