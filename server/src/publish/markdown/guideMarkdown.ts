/** The whole guide as one file of plain Markdown, for shops and hosting sites. */
import { lengthText, markItems } from "../../checks/words.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { StageNode } from "../../model/stageNode.ts";
import { inventory } from "../../model/tools/inventory.ts";
import type { HeadingFact } from "../../syntax/facts.ts";
import type { PictureSource } from "../fill/filler.ts";
import { limitWords } from "../fill/readings.ts";
import { localNumbers } from "../localNumbers.ts";
import { packageName, shortName, valueText } from "../parts/lineText.ts";
import { lookWords } from "../parts/look.ts";
import { partsOfStage, type StageParts } from "../parts/stageParts.ts";
import type { Templates } from "../piece/templates.ts";
import { readingsOf } from "../record/readings.ts";
import { titleOf } from "../title.ts";
import type { PageWords } from "../words/form.ts";
import { filled, pageWords } from "../words/words.ts";
import { type Column, escapeInline, plainTable } from "./escapeInline.ts";
import { PageLabels } from "./pageLabels.ts";
import { resolvePiece } from "./resolvePiece.ts";

/** Says that a file is ours, so that it may be replaced; no renderer shows it. */
export const MARKDOWN_MARK =
  "<!-- Made by Kitquill from the guide's source: change that, not this. -->";

export function guideMarkdown(
  guide: GuideState,
  templates: Templates,
  pictures: PictureSource,
  errors: number,
): string {
  const words = pageWords(guide.language);
  const stages = new Map<HeadingFact, StageNode>();
  for (const stage of guide.stages) if (stage.heading) stages.set(stage.heading.fact, stage);
  const stageHead = (heading: HeadingFact) => {
    const stage = stages.get(heading);
    if (!stage || stage.steps.length === 0) return undefined;
    const below = stageTable(partsOfStage(stage, guide), guide, words);
    return { number: stage.number, below };
  };
  const labels = new PageLabels(guide, templates);
  const context = { guide, words, templates, pictures, labels, stageHead };
  const body = guide.pages.map(({ uri }) => {
    const pieces = guide.pieces.filter(({ page }) => page.uri === uri);
    return pieces
      .map((piece) => resolvePiece(piece, context))
      .join("")
      .trim();
  });
  const head = [MARKDOWN_MARK, opening(guide), forced(errors, words)];
  const parts = [...head, `> ${words.rules}`, ...body, needs(guide, words), record(guide, words)];
  return `${parts.filter((part) => part !== "").join("\n\n")}\n`;
}

/** The title, where the text does not begin with a heading of its own. */
function opening(guide: GuideState): string {
  const heading = guide.pieces
    .flatMap(({ facts }) => facts.facts)
    .find((fact) => fact.kind === "heading");
  const title = titleOf(guide);
  return heading?.level === 1 || !title ? "" : `# ${escapeInline(title)}`;
}

function forced(errors: number, words: PageWords): string {
  return errors > 0 ? `**${escapeInline(filled(words.forced, errors))}**` : "";
}

function stageTable({ parts, hardware }: StageParts, guide: GuideState, words: PageWords): string {
  const { table } = words;
  const columns: Column[] = [
    { title: table.parts },
    { title: table.value },
    { title: table.look },
    { title: table.height, isNumber: true },
    { title: table.bag },
  ];
  const rows = parts.map(({ line, parts }) => {
    const names = markItems(parts.map((part) => shortName(part, guide)));
    const look = [...lookWords(parts[0]!, guide, words), packageName(line)];
    const mm = parts.flatMap(({ offBoard, height }) => (offBoard ? [] : (height?.mm ?? [])));
    return [
      names.join(", "),
      valueText(line, guide.language),
      look.filter((text) => text !== "").join(" · "),
      mm.length > 0 ? localNumbers(`${Math.max(...mm)} mm`, guide.language) : "",
      line.cells.bag?.text ?? "",
    ];
  });
  for (const {
    hardware: { line, name },
    count,
    metres,
  } of hardware) {
    const amount = metres > 0 ? localNumbers(lengthText(metres), guide.language) : String(count);
    const { description, bag } = line.cells;
    rows.push([`${amount} × ${name}`, "", description?.text ?? "", "", bag?.text ?? ""]);
  }
  return rows.length === 0 ? "" : plainTable(columns, rows);
}

function needs(guide: GuideState, words: PageWords): string {
  const entries = inventory(guide);
  const list = (title: string, tools: boolean) => {
    const named = entries.filter(({ kind }) => (kind === "tool") === tools);
    const items = named.map(({ name }) => `- ${escapeInline(name)}\n`).join("");
    return items ? `### ${title}\n\n${items}` : "";
  };
  const lists = [list(words.tools, true), list(words.ownSupplies, false)];
  const told = lists.filter((one) => one !== "").join("\n");
  return told ? `## ${words.need}\n\n${told.trim()}` : "";
}

function record(guide: GuideState, words: PageWords): string {
  const { record } = words;
  const rows = readingsOf(guide).map(({ step, reading }) => {
    const unit = reading.unit && limitWords(reading, words);
    return [step ?? "", reading.name, unit || limitWords(reading, words), "…"];
  });
  if (rows.length === 0) return "";
  const titles = [words.step.replace("#", "").trim(), record.reading, record.limits, record.value];
  return `## ${record.title}\n\n${plainTable(
    titles.map((title) => ({ title })),
    rows,
  ).trim()}`;
}
