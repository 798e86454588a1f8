/**
 * Places in the HTML of a piece that are filled when the page is put together: what stands there
 * depends on the parts list, on other pieces, or on where the pictures go.
 */
import type { Element, RootContent } from "hast";
import type { Figure, PartMark } from "../../syntax/dialect.ts";
import type { Signal } from "../../syntax/signalWords.ts";

export type Hole =
  /** Number and box of the step that begins at `start`, if one does. */
  | { readonly kind: "tick"; readonly start: number; readonly as: "inline" | "cell" }
  /** `alone`: between sentences. */
  | { readonly kind: "mark"; readonly mark: PartMark; readonly alone: boolean }
  | { readonly kind: "figure"; readonly figure: Figure }
  /** The field of a reading, below the block that names it. */
  | { readonly kind: "reading"; readonly figure: Figure }
  /** The worksheet for picking matched sets, below the block that asks for it. */
  | { readonly kind: "worksheet"; readonly mark: PartMark }
  /** A word in the form of a designator. */
  | { readonly kind: "mention"; readonly name: string }
  | NoteHead
  | Picture
  | { readonly kind: "footnote"; readonly identifier: string };

/** Sign, signal word and hazard of a note. */
export interface NoteHead {
  readonly kind: "noteHead";
  /** Offset of the note in the piece. */
  readonly start: number;
  readonly signal: Signal;
  /** As written; undefined in an alert. */
  readonly word: string | undefined;
  readonly hazard: string;
}

export interface Picture {
  readonly kind: "picture";
  readonly url: string;
  readonly alt: string;
  readonly title: string | undefined;
  /** In CSS pixels, where the author gives it. */
  readonly width: number | undefined;
}

/** HTML with holes in it, in order. */
export type Template = readonly (string | Hole)[];

/**
 * Stands for a hole while libraries work on the tree. Authors cannot write it: elements of this name
 * are taken out of their HTML.
 */
export const HOLE_TAG = "kitquill-hole";

/** Enclose a hole's number in finished HTML: noncharacters, which are taken out of authors' texts. */
const OPEN = "\uFDD0";
const CLOSE = "\uFDD1";

/** The text without the signs that enclose holes and pictures, as long as before. */
export function withoutHoleSigns(text: string): string {
  return text.replace(/[\uFDD0-\uFDD3]/g, "\uFFFD");
}

/** Collects the holes of a piece. */
export class Holes {
  readonly #holes: Hole[] = [];

  /** An element that stands for the hole in the tree. */
  element(hole: Hole): Element {
    const index = this.#holes.push(hole) - 1;
    const properties = { dataIndex: String(index) };
    return { type: "element", tagName: HOLE_TAG, properties, children: [] };
  }

  /** What the element is written as, to be found again in the finished HTML. */
  sign(element: Element): RootContent {
    return { type: "raw", value: `${OPEN}${element.properties.dataIndex}${CLOSE}` };
  }

  /** Cuts finished HTML at its holes. */
  cut(html: string): Template {
    const template: (string | Hole)[] = [];
    for (const [index, text] of html.split(/\uFDD0(\d+)\uFDD1/).entries()) {
      if (index % 2 === 1) template.push(this.#holes[Number(text)]!);
      else if (text !== "") template.push(text);
    }
    return template;
  }
}
