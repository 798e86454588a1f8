/** Renames a part in the pages of a guide: in marks, in the prose, in figures, in the front matter. */
import { placeOf } from "../../checks/verdict.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Part } from "../../model/parts.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import { shift, type TextEdit } from "../../text/span.ts";
import { namingsOf } from "../naming/figureNamings.ts";
import { PartMatcher } from "../naming/matcher.ts";
import { type Naming, namingsIn } from "../naming/namings.ts";
import { type ChainStyle, type Link, renameInChain } from "./chainText.ts";
import type { NewName, RenameEdit } from "./edit.ts";
import { renameInFrontMatter } from "./frontMatterText.ts";
import { boardOf } from "./rangeText.ts";

const STYLE: ChainStyle = { separator: ", ", sign: "–" };

export function renameInGuide(guide: GuideState, part: Part, name: NewName): RenameEdit[] {
  const rename = new GuideRename(guide, part, name);
  return [
    ...guide.pieces.flatMap((piece) => rename.inPiece(piece)),
    ...rename.inFigures(),
    ...renameInFrontMatter(guide, part, name),
  ];
}

class GuideRename {
  readonly #guide: GuideState;
  readonly #part: Part;
  readonly #name: NewName;
  readonly #matcher: PartMatcher;

  constructor(guide: GuideState, part: Part, name: NewName) {
    this.#guide = guide;
    this.#part = part;
    this.#name = name;
    this.#matcher = new PartMatcher([part], guide.kit);
  }

  inPiece(piece: PieceNode): RenameEdit[] {
    const namings = [...namingsIn(piece)];
    const meant = namings.filter((naming) => this.#matcher.matches(naming));
    const { uri } = piece.page;
    const edits: RenameEdit[] = [];
    for (const mark of new Set(meant.flatMap((naming) => naming.mark ?? []))) {
      const chain = namings.filter((naming) => naming.mark === mark);
      for (const edit of this.#inChain(chain)) edits.push({ uri, ...edit, kind: "mark" });
    }
    for (const naming of meant) {
      if (naming.mark) continue;
      for (const edit of this.#inChain([naming])) edits.push({ uri, ...edit, kind: "prose" });
    }
    return edits;
  }

  #inChain(namings: readonly Naming[]): readonly TextEdit[] {
    const { page } = namings[0]!.piece;
    const links = namings.map((naming) => this.#linkOf(naming));
    return renameInChain(page.text, links, this.#name, STYLE);
  }

  #linkOf({ piece, span, named, item, board }: Naming): Link {
    const isRange = named.kind === "range";
    return {
      span: shift(span, piece.start),
      names: isRange ? named.names : [named.name],
      isRange,
      board: named.board,
      mayGrow: item === named,
      isMeant: (name) => this.#guide.kit.find(name, named.board, board).part === this.#part,
    };
  }

  *inFigures(): Iterable<RenameEdit> {
    for (const figure of this.#guide.figures.all()) {
      for (const naming of namingsOf(figure, this.#guide)) {
        if (naming.part !== this.#part) continue;
        const { uri, span } = placeOf(naming.at);
        const page = this.#guide.pages.find((one) => one.uri === uri)!;
        const edit = this.#inName(page.text.slice(span.start, span.end), span.start);
        if (edit) yield { uri, ...edit, kind: "figure" };
      }
    }
  }

  /** `R50`, `relay/R50`, or `R(R50)`: the designator in it is replaced. */
  #inName(source: string, start: number): TextEdit | undefined {
    const { from, to } = this.#name;
    const bracket = source.indexOf("(") + 1;
    const skipped = Math.max(bracket, boardOf(source).length);
    const at = source.toUpperCase().indexOf(from.toUpperCase(), skipped);
    if (at < 0) return undefined;
    return { span: { start: start + at, end: start + at + from.length }, text: to };
  }
}
