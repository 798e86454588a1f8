/** Writes the comment that allows a finding; the reason is left to the author. */
import type { GuideState } from "../../model/guideState.ts";
import type { StepNode } from "../../model/pieceNode.ts";
import type { TextSource } from "../../text/textSource.ts";
import { pieceAt } from "../pieceAt.ts";
import type { Action } from "./action.ts";
import { stepAt } from "./stepAt.ts";

/** For a finding of the check at an offset; undefined where no comment can stand for it. */
export function allowHere(
  guide: GuideState,
  uri: string,
  offset: number,
  code: string,
): Action | undefined {
  const step = stepAt(guide, uri, offset);
  if (step) return aboveStep(step, code);
  return atStageHead(guide, uri, offset, code);
}

function aboveStep(step: StepNode, code: string): Action | undefined {
  const { piece, fact } = step;
  // Between the rows of a table a comment would end it.
  const isRow = piece.facts.facts.some(
    (one) => one.kind === "row" && one.span.start === fact.span.start,
  );
  if (isRow) return undefined;
  const { text } = piece.page;
  const start = piece.start + fact.span.start;
  const lineStart = startOfLine(text, start);
  const indent = text.slice(lineStart, start);
  if (!/^[ \t>]*$/.test(indent)) return undefined;
  return comment(step.piece.page.uri, lineStart, {
    before: `${indent}`,
    after: lineEnd(text),
    code,
    where: `step ${step.number}`,
  });
}

function atStageHead(
  guide: GuideState,
  uri: string,
  offset: number,
  code: string,
): Action | undefined {
  const piece = pieceAt(guide, uri, offset);
  const stage = guide.stages.findLast(({ heading }) => {
    if (!piece || heading?.piece.page.uri !== uri) return false;
    return heading.piece.start + heading.fact.span.start <= offset;
  });
  if (!stage?.heading || stage.steps.length === 0) return undefined;
  const { piece: home, fact } = stage.heading;
  const end = lineEnd(home.page.text);
  return comment(uri, home.start + fact.span.end, {
    before: `${end}${end}`,
    after: "",
    code,
    where: "this stage",
  });
}

function comment(
  uri: string,
  at: number,
  { before, after, code, where }: Readonly<Record<"before" | "after" | "code" | "where", string>>,
): Action {
  const head = `${before}<!-- allow ${code}: `;
  return {
    title: `Allow ${code} in ${where}, with a reason`,
    kind: "allow",
    edits: [{ uri, edits: [{ span: { start: at, end: at }, text: `${head} -->${after}` }] }],
    goOn: { uri, offset: at + head.length },
  };
}

function startOfLine(text: TextSource, offset: number): number {
  let start = offset;
  while (start > 0 && text.charCodeAt(start - 1) !== 10 && text.charCodeAt(start - 1) !== 13) {
    start--;
  }
  return start;
}

/** As the page's first line ends. */
function lineEnd(text: TextSource): string {
  return /\r\n|\n|\r/.exec(text.slice(0, 2000))?.[0] ?? "\n";
}
