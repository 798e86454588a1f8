/**
 * All that is known of a guide as plain data, for anyone's own tools; `server/docs/guide.schema.json`
 * says what each field means. A field is there always; `null` stands for what is not known.
 */
import { accountsFor } from "../../model/accounting.ts";
import type { GuideFigure } from "../../model/figures/figure.ts";
import type { Stage, Use } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { ListLine } from "../../model/list/partsList.ts";
import { placesOf, suppliedPieces } from "../../model/list/supplied.ts";
import { kindOf } from "../../model/partKind.ts";
import type { Hardware, Part } from "../../model/parts.ts";
import type { PieceNode, StepNode } from "../../model/pieceNode.ts";
import { inventory } from "../../model/tools/inventory.ts";
import type { Quantity } from "../../quantity/value.ts";
import type { NoteFact, TextFact } from "../../syntax/facts.ts";
import { BlockReader } from "../narration/blockText.ts";
import { readingsOf } from "../record/readings.ts";
import { titleOf } from "../title.ts";
import { pageWords } from "../words/words.ts";
import { pathFromGuide } from "./pathFromGuide.ts";

/** Grows when a field changes its meaning or goes; new fields may come without. */
const MODEL_FORMAT = "kitquill-guide-1";

export function guideModel(guide: GuideState, errors: number) {
  const file = (uri: string) => pathFromGuide(guide.pages[0]!.uri, uri);
  return {
    generator: "Kitquill",
    format: MODEL_FORMAT,
    title: titleOf(guide) ?? null,
    language: guide.frontMatter.language?.value ?? null,
    errors,
    pages: guide.pages.map(({ uri }) => file(uri)),
    lists: guide.lists.map(({ uri }) => file(uri)),
    boards: [...guide.boards],
    parts: guide.parts.map((part) => ({ ...partOf(part, guide), list: file(part.list.uri) })),
    hardware: guide.hardware.map((one) => ({
      ...hardwareOf(one, guide),
      list: file(one.list.uri),
    })),
    stages: guide.stages
      .filter(({ steps }) => steps.length > 0)
      .map((stage) => stageOf(stage, guide)),
    figures: guide.figures.all().flatMap((figure) => figureOf(figure)),
    readings: readingsOf(guide).map(({ step, reading }) => ({
      name: reading.name,
      step: step ?? null,
      lowest: reading.low ?? null,
      highest: reading.high ?? null,
      unit: reading.unit,
    })),
    hazards: hazardsOf(guide),
    tools: inventory(guide).map(({ kind, name, listed, steps }) => ({
      kind,
      name,
      listed: listed ?? null,
      steps: [...steps],
    })),
  };
}

function partOf(part: Part, guide: GuideState) {
  const { name, board, line, fitted, optional, offBoard, height, side } = part;
  const uses = guide.uses(part);
  return {
    name,
    board: board || null,
    kind: kindOf(part),
    ...lineOf(line),
    value: quantityOf(line.value),
    tolerance: line.tolerance ?? null,
    heightMm: height?.mm ?? null,
    heightFrom: height?.from ?? null,
    side: side ?? null,
    fitted,
    optional,
    offBoard,
    supplied: suppliedPieces(line, placesOf(line)).pieces,
    fittedIn: uses.find((use) => accountsFor(use) && use.role !== "empty")?.step.number ?? null,
    uses: uses.map(({ role, step }) => ({ role, step: step.number })),
  };
}

function hardwareOf(hardware: Hardware, guide: GuideState) {
  const { name, supplied, metres, spare, line } = hardware;
  return {
    name,
    ...lineOf(line),
    pieces: supplied ?? null,
    spare,
    metres: metres ?? null,
    uses: guide.uses(hardware).map(({ role, step, count, metres }) => ({
      role,
      step: step.number,
      count: count ?? null,
      metres: metres ?? null,
    })),
  };
}

/** The cells as the list has them. */
function lineOf({ cells, row }: ListLine) {
  return {
    text: cells.value?.text ?? null,
    package: cells.package?.text ?? null,
    description: cells.description?.text ?? null,
    partNumber: cells["part number"]?.text ?? null,
    bag: cells.bag?.text ?? null,
    row,
  };
}

function quantityOf(quantity: Quantity | undefined) {
  return quantity ? { amount: quantity.amount, unit: quantity.unit } : null;
}

function stageOf(stage: Stage, guide: GuideState) {
  return {
    number: stage.number,
    title: stage.heading?.fact.title ?? null,
    board: stage.board ?? null,
    steps: stage.steps.map((step) => ({
      number: step.number,
      text: textOf(step as StepNode, guide),
      uses: step.piece.uses.filter((use) => use.step === step).map(useOf),
    })),
  };
}

function useOf({ supply, role, count, metres }: Use) {
  return {
    role,
    part: supply.name,
    board: (supply.kind === "part" && supply.board) || null,
    count: count ?? null,
    metres: metres ?? null,
  };
}

/** What the step says, a line for each block of text, with marks and figures as they are shown. */
function textOf(step: StepNode, guide: GuideState): string {
  const { piece, index } = step;
  const reader = new BlockReader(piece, guide, pageWords(guide.language));
  const start = step.fact.span.start;
  const next = piece.steps[index + 1]?.fact.span.start ?? piece.length;
  const blocks = piece.facts.facts.filter(
    (fact): fact is TextFact =>
      fact.kind === "text" && !fact.quoted && fact.span.start >= start && fact.span.start < next,
  );
  return blocks.map((block) => withThings(reader.read(block))).join("\n");
}

function withThings({ text, things }: { text: string; things: readonly string[] }): string {
  return [text, ...things.map((thing) => `(${thing})`)].filter((one) => one !== "").join(" ");
}

function figureOf({ figure, step, role, evaluation, stated }: GuideFigure) {
  if (figure.reading) return [];
  const value = evaluation?.value;
  return [
    {
      name: figure.name?.text ?? null,
      role,
      step: step?.number ?? null,
      expression: figure.expression?.text ?? null,
      tolerance: figure.tolerance?.text ?? null,
      unit: value?.unit ?? null,
      nominal: finite(value?.nominal),
      lowest: finite(value?.min),
      highest: finite(value?.max),
      stated: figure.stated?.text ?? null,
      statedNominal: finite(stated?.value?.nominal),
    },
  ];
}

/** JSON knows no infinity. */
function finite(amount: number | undefined): number | null {
  return amount !== undefined && Number.isFinite(amount) ? amount : null;
}

function hazardsOf(guide: GuideState) {
  const words = pageWords(guide.language);
  return guide.pieces.flatMap((piece) => {
    const reader = new BlockReader(piece, guide, words);
    const notes = piece.facts.facts.filter((fact): fact is NoteFact => fact.kind === "note");
    return notes.map((note) => ({
      signal: note.signal,
      hazard: note.hazard || null,
      text: noteText(note, piece, reader),
      beforeStep: stepBehind(note, piece, guide),
    }));
  });
}

function noteText(note: NoteFact, piece: PieceNode, reader: BlockReader): string {
  const blocks = piece.facts.facts.filter(
    (fact): fact is TextFact =>
      fact.kind === "text" && fact.span.start >= note.span.start && fact.span.end <= note.span.end,
  );
  return blocks.map((block) => reader.read(block).text).join("\n");
}

/** The first step that begins behind the note, which it covers at the latest. */
function stepBehind({ span }: NoteFact, piece: PieceNode, guide: GuideState): string | null {
  const here = piece.steps.find(({ fact }) => fact.span.start >= span.start);
  if (here) return here.number;
  const after = guide.pieces.slice(piece.order + 1).find(({ steps }) => steps.length > 0);
  return after?.steps[0]?.number ?? null;
}
