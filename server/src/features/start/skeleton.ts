/** Writes the beginning of a guide from its parts lists: every part in a step, ready to be worded. */
import { isStaticPart } from "../../checks/hazards/partDangers.ts";
import { withSpaces } from "../../checks/wording/looseUnits.ts";
import { lengthText, markItems } from "../../checks/words.ts";
import { writtenKey } from "../../model/hardwareKeys.ts";
import { type BoardList, Kit } from "../../model/kit.ts";
import type { Hardware } from "../../model/parts.ts";
import { quoteYaml } from "../../syntax/yaml/tree.ts";
import type { Language } from "../../text/language.ts";
import type { Hazard } from "../../trade/hazards/hazards.ts";
import { noteTemplate } from "../../trade/hazards/templates.ts";
import { type AlikeParts, type BoardPlan, partsOffBoards, planBoards } from "./fittingOrder.ts";
import { START_WORDS, type StartWords } from "./words.ts";

export interface NewGuide {
  readonly title: string;
  readonly language: Language;
  /** Parts lists with the paths under which the guide will name them. */
  readonly lists: readonly (BoardList & { readonly path: string })[];
}

/**
 * The text of a guide that fits every part of the lists once, lowest first, a stage for each board.
 * Lines end with LF.
 */
export function startGuide({ title, language, lists }: NewGuide): string {
  const words = START_WORDS[language];
  const kit = new Kit(lists, { heights: [], offBoard: [], spares: [] });
  const plans = planBoards(kit);
  const stages = [
    ...plans.map((plan) => solderingStage(plan, words)),
    ...plans.map((plan) => insertingStage(plan, plans, words)),
    mechanicalStage(kit, words),
  ].filter((stage) => stage !== undefined);
  return [
    frontMatter({ title, language, lists }, words),
    `# ${plain(title)}`,
    `<!-- ${words.about} -->`,
    ...safetyNotes(kit, plans, language),
    `## ${words.checkParts}`,
    words.checkPartsText,
    ...stages,
  ]
    .join("\n\n")
    .concat("\n");
}

/** What a builder who solders and handles chips must know before the first stage. */
function safetyNotes(kit: Kit, plans: readonly BoardPlan[], language: Language): string[] {
  const hazards: Hazard[] = [];
  if (plans.some(({ soldered }) => soldered.length > 0)) {
    hazards.push("hot surface", "fumes", "eye injury");
  }
  if (kit.parts.some((part) => isStaticPart(part, "insert"))) hazards.push("static discharge");
  return hazards.flatMap((hazard) => noteTemplate(hazard, language)?.join("\n") ?? []);
}

function frontMatter({ title, language, lists }: NewGuide, words: StartWords): string {
  const single = lists.length === 1 && lists[0]!.board === undefined;
  const parts = single
    ? `parts: ${quoteYaml(lists[0]!.path)}`
    : `parts:\n${lists.map(({ board, path }) => `  ${board ? `${quoteYaml(board)}: ` : "- "}${quoteYaml(path)}`).join("\n")}`;
  return [
    "---",
    `title: ${quoteYaml(title)}`,
    `language: ${language}`,
    parts,
    `tools: [${words.tools.join(", ")}]`,
    "---",
  ].join("\n");
}

function solderingStage(plan: BoardPlan, words: StartWords): string | undefined {
  if (plan.soldered.length === 0) return undefined;
  const title = plan.board ? words.board.replace("{board}", plan.board) : words.theBoard;
  const heading = plan.side === "bottom" ? `${title}, ${words.rearSide}` : title;
  const steps = plan.soldered.map((group) => stepOf(words.solder, group, "", words));
  return stage(heading, plan.board, steps);
}

function insertingStage(
  plan: BoardPlan,
  plans: readonly BoardPlan[],
  words: StartWords,
): string | undefined {
  if (plan.inserted.length === 0) return undefined;
  const several = plans.filter(({ inserted }) => inserted.length > 0).length > 1;
  const heading = several && plan.board ? `${words.lastParts}: ${plan.board}` : words.lastParts;
  const steps = plan.inserted.map((group) =>
    group.kind === "battery"
      ? stepOf(words.inPlace, group, "", words)
      : stepOf(words.insert, group, "insert: ", words),
  );
  return stage(heading, plan.board, steps);
}

function mechanicalStage(kit: Kit, words: StartWords): string | undefined {
  const fitted = partsOffBoards(kit).map((group) => stepOf(words.inPlace, group, "", words));
  const used = kit.hardware.flatMap((one) => {
    const mark = hardwareMark(one, kit.hardware);
    return mark ? [words.use.replace("{mark}", () => mark)] : [];
  });
  const steps = [...fitted, ...used];
  return steps.length > 0 ? stage(words.case, "", steps) : undefined;
}

/** `[4 × M3x10]`, all that is supplied but for spares; undefined where no mark can name the line. */
function hardwareMark(one: Hardware, all: readonly Hardware[]): string | undefined {
  const key = writtenKey(one, all);
  if (key === undefined || !one.line.fitted) return undefined;
  if (one.metres !== undefined) return `[${lengthText(one.metres)} × ${key}]`;
  const count = (one.supplied ?? 0) - one.spare;
  return count > 0 ? `[${count} × ${key}]` : undefined;
}

function stage(heading: string, board: string, steps: readonly string[]): string {
  const comment = board ? `\n\n<!-- board ${board} -->` : "";
  const numbered = steps.map((step, index) => `${index + 1}. ${step}`);
  return `## ${plain(heading)}${comment}\n\n${numbered.join("\n")}`;
}

function stepOf(
  pattern: string,
  { kind, parts, value, description, statable, optional }: AlikeParts,
  role: string,
  words: StartWords,
): string {
  const named = words.kinds[kind];
  const [one, several] = named ?? words.anyKind;
  const names = parts.map(({ name }) => ({ name }));
  const stated = statable ? ` = ${value}` : "";
  const said = [
    ...(statable ? [] : remarksOf(value, description, named !== undefined)),
    ...(optional ? [words.optional] : []),
  ];
  const remark = said.length > 0 ? ` (${plain(said.join(", "))})` : "";
  const mark = `[${role}${markItems(names).join(", ")}${stated}]${remark}`;
  return pattern
    .replace("{what}", parts.length === 1 ? one : several)
    .replace("{mark}", () => mark);
}

/** A size tells no LED from another, and of a part of no known kind the list's words tell what it is. */
function remarksOf(value: string, description: string, isKnown: boolean): string[] {
  const words = isKnown && !SIZE.test(value) ? "" : description;
  const isIncluded = words.toLowerCase().includes(value.toLowerCase());
  return [words, isIncluded ? "" : value].filter((text) => text !== "").map(withSpaces);
}

const SIZE = /^\d+(?:[.,]\d+)? ?mm$/;

/** The text as it is, inside a line of Markdown. */
function plain(text: string): string {
  return text.replace(/[\\`*_[\]<>{}|~]/g, "\\$&");
}
