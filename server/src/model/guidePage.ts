/** One page of a guide: its text cut into pieces, its front matter, and the labels it defines. */
import { digestPiece, type Labels } from "../syntax/digest.ts";
import type { PieceFacts } from "../syntax/facts.ts";
import type { FrontMatter } from "../syntax/frontMatter.ts";
import { findFences } from "../syntax/frontMatterFence.ts";
import { readFrontMatter } from "../syntax/frontMatterReader.ts";
import { PieceSequence } from "../syntax/pieces.ts";
import type { TextSource } from "../text/textSource.ts";
import type { Page } from "./guide.ts";

const NO_LABELS: Labels = { links: [], footnotes: [] };

export class GuidePage implements Page {
  readonly uri: string;
  readonly sequence: PieceSequence<PieceFacts>;
  addresses: ReadonlyMap<string, string> = new Map();
  #labels: Labels = NO_LABELS;
  #frontMatter: FrontMatter | undefined;

  constructor(uri: string, text: string) {
    this.uri = uri;
    this.#frontMatter = readFrontMatter(text);
    this.sequence = new PieceSequence(text, {
      headLength: () => this.#frontMatter?.span.end ?? 0,
      read: (piece, candidate) => digestPiece(piece, candidate, this.#labels),
    });
  }

  get text(): TextSource {
    return this.sequence.text;
  }

  get frontMatter(): FrontMatter | undefined {
    return this.#frontMatter;
  }

  /** Follows an edit that left `text`. Gives whether the front matter may have changed. */
  edit(start: number, end: number, replacement: string, text: TextSource): boolean {
    const head = this.#frontMatter?.span.end ?? 0;
    // An edit behind the head can still close front matter that was open.
    const touchesHead = start <= head || (head === 0 && this.text.slice(0, 3) === "---");
    if (touchesHead) this.#frontMatter = readHead(text, head + replacement.length);
    this.sequence.edit(start, end, replacement, text);
    return touchesHead;
  }

  /** Reads on until the whole text is known; yields after each piece. */
  *advance(): Generator<void, void, void> {
    yield* this.sequence.advance();
    const labels = this.#definedLabels();
    const changed = [
      ...difference(labels.links, this.#labels.links),
      ...difference(labels.footnotes, this.#labels.footnotes).map((label) => `^${label}`),
    ];
    this.#labels = labels;
    if (changed.length === 0) return;
    // A label that comes or goes turns brackets elsewhere into links or back.
    this.sequence.reread((_, text) => {
      const folded = text.replace(/\s+/g, " ").toLowerCase().toUpperCase();
      return changed.some((label) => folded.includes(`[${label}`) || folded.includes(`${label}]`));
    });
    yield;
  }

  /** Takes in what the pieces define. */
  #definedLabels(): Labels {
    const links = new Map<string, string>();
    const footnotes = new Set<string>();
    for (const { digest } of this.sequence.pieces) {
      const { defines } = digest;
      // Nearly all pieces define none, and all of them are asked at each keystroke.
      if (defines.links.length > 0) addLinks(links, defines);
      if (defines.footnotes.length > 0) for (const label of defines.footnotes) footnotes.add(label);
    }
    this.addresses = links;
    if (links.size === 0 && footnotes.size === 0) return NO_LABELS;
    return { links: [...links.keys()], footnotes: [...footnotes] };
  }
}

/** Of several definitions of a label the first counts. */
function addLinks(links: Map<string, string>, defines: PieceFacts["defines"]): void {
  for (const [i, label] of defines.links.entries()) {
    if (!links.has(label)) links.set(label, defines.addresses[i]!);
  }
}

/** So much behind the front matter as it was tells whether it still ends there. */
const BEHIND_HEAD = 1000;

/** The front matter, from the text's beginning alone where that holds its end. */
function readHead(text: TextSource, expected: number): FrontMatter | undefined {
  const beginning = text.slice(0, expected + BEHIND_HEAD);
  const fences = findFences(beginning);
  const isWhole = fences?.closed === true && fences.span.end < beginning.length - 1;
  return readFrontMatter(isWhole ? beginning : text.toString());
}

function difference(a: readonly string[], b: readonly string[]): string[] {
  return [...a.filter((one) => !b.includes(one)), ...b.filter((one) => !a.includes(one))];
}
