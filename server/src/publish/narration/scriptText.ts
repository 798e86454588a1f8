/** The script as a text to read from, with the times of stages and steps. */
import type { GuideState } from "../../model/guideState.ts";
import { filled } from "../words/words.ts";
import type { Chapter, Passage, Script } from "./script.ts";
import { clockTime, durationText } from "./time.ts";
import type { ScriptWords } from "./words/form.ts";
import { narrationWords } from "./words/words.ts";

/** Says that a file is ours, so that it may be replaced. */
export const SCRIPT_MARK = "Kitquill narration";

const WIDTH = 88;
const INDENT = "        ";

export function scriptText(script: Script, guide: GuideState): string {
  const words = narrationWords(guide.language).script;
  const head = [
    ...(script.title ? [script.title] : []),
    `${words.title} (${SCRIPT_MARK})`,
    "",
    ...wrapped(filled(words.spoken, script.rate, durationText(script.toSpeak)), ""),
    ...wrapped(filled(words.bench, durationText(script.toDo)), ""),
  ];
  const chapters = script.chapters.flatMap((chapter) => chapterLines(chapter, words));
  return `${[...head, ...chapters].join("\n")}\n`;
}

function chapterLines({ stage, title, start, end, passages }: Chapter, words: ScriptWords) {
  const toDo = passages.reduce((sum, { work }) => sum + (work?.seconds ?? 0), 0);
  const times = [filled(words.toSpeak, durationText(end - start))];
  if (toDo > 0) times.push(filled(words.toDo, durationText(toDo)));
  const number = stage.steps.length > 0 ? `${stage.number}  ` : "";
  const name = `${number}${title}`.trimEnd();
  const bodies = passages
    .filter(({ kind }) => kind !== "title")
    .flatMap((one) => passageLines(one, words));
  return [
    "",
    "",
    name,
    "=".repeat(name.length),
    `${clockTime(start)}  ${times.join(", ")}`,
    ...bodies,
  ];
}

function passageLines({ step, lines, things, work }: Passage, words: ScriptWords): string[] {
  const [first, last] = [lines[0], lines.at(-1)];
  if (!first || !last) return [];
  const times = [filled(words.toSpeak, durationText(last.end - first.start))];
  if (work) {
    const mark = work.estimated ? words.estimated : "";
    times.push(`${filled(words.toDo, durationText(work.seconds))}${mark}`);
  }
  const label = step ? `${step.number}  ` : "";
  const needs = things.length > 0 ? wrapped(`${words.needs}: ${things.join("; ")}`, INDENT) : [];
  const said = wrapped(lines.map(({ text }) => text).join(" "), INDENT);
  return ["", `${label}${clockTime(first.start)}  ${times.join(", ")}`, ...said, ...needs];
}

function wrapped(text: string, indent: string): string[] {
  const lines: string[] = [];
  let line = indent;
  for (const word of text.split(" ")) {
    if (line.length > indent.length && line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      line = indent;
    }
    line += line.length > indent.length ? ` ${word}` : word;
  }
  return [...lines, line];
}
