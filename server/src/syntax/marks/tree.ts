/** Marks, figures and near misses as nodes of the Markdown tree (mdast). */
import type { Literal } from "mdast";
import type { Extension, Handle } from "mdast-util-from-markdown";
import type { Figure, PartMark, SyntaxProblem } from "../dialect.ts";
import { markAsDefinition, markAsLink } from "./swallowed.ts";

/** `[R1–R4]`. `value` is the bracket as a plain renderer shows it, like that of the nodes below. */
export interface PartMarkNode extends Literal {
  type: "partMark";
  mark: PartMark;
}

/** `{VCC = 13.8 V}`. */
export interface FigureNode extends Literal {
  type: "figure";
  figure: Figure;
}

/**
 * The bracket or brace of a near miss: the `]` that ends or the `{` that begins it. What is between
 * stays ordinary Markdown; the problem's span covers the whole.
 */
export interface AlmostMarkNode extends Literal {
  type: "almostMark";
  problem: SyntaxProblem;
}

declare module "mdast-util-from-markdown" {
  interface CompileData {
    /** Offset of the round bracket behind the link text in hand. */
    resourceStart?: number;
  }
}

declare module "mdast" {
  interface DefinitionData {
    /** What to say when the definition was meant as a mark. */
    problem?: SyntaxProblem;
  }
  interface LinkData {
    problem?: SyntaxProblem;
  }

  interface PhrasingContentMap {
    partMark: PartMarkNode;
    figure: FigureNode;
    almostMark: AlmostMarkNode;
  }
  interface RootContentMap {
    partMark: PartMarkNode;
    figure: FigureNode;
    almostMark: AlmostMarkNode;
  }
}

const exit: Handle = function (token) {
  this.exit(token);
};

export const dialectFromMarkdown: Extension = {
  enter: {
    partMark(token) {
      this.enter({ type: "partMark", mark: token._mark!, value: token._shown! }, token);
    },
    figure(token) {
      this.enter({ type: "figure", figure: token._figure!, value: token._shown! }, token);
    },
    definitionMarker(token) {
      const node = this.stack.at(-1)!;
      if (node.type !== "definition") return;
      const problem = markAsDefinition(node, token.start.offset);
      if (problem) node.data = { problem };
    },
    almostMark(token) {
      this.enter({ type: "almostMark", problem: token._problem!, value: token._shown! }, token);
    },
  },
  exit: {
    partMark: exit,
    figure: exit,
    almostMark: exit,
    resourceMarker(token) {
      const node = this.stack.at(-1)!;
      if (this.sliceSerialize(token) === "(") this.data.resourceStart = token.start.offset;
      else if (node.type === "link") {
        const span = { start: node.position!.start.offset!, end: token.end.offset };
        const problem = markAsLink(node, this.data.resourceStart!, span);
        if (problem) node.data = { problem };
      }
    },
  },
};
