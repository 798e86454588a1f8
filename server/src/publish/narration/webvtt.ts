/** The script as captions and as chapters: WebVTT (W3C Candidate Recommendation, 4 April 2019). */
import type { Chapter, Passage, Script } from "./script.ts";

/** Says that a file is ours, so that it may be replaced. */
export const CAPTIONS_MARK = "NOTE Kitquill narration";

/** A cue a sentence; its identifier tells stage or step, and which sentence of it. */
export function captions(script: Script): string {
  const places = new Map<string, number>();
  const blocks = script.chapters.flatMap((chapter) =>
    chapter.passages.flatMap((passage) => cuesOf(passage, placeOf(passage, chapter, places))),
  );
  return file(script, blocks);
}

/** A cue a stage, from its title to its last word. */
export function chapterTrack(script: Script): string {
  const blocks = script.chapters.map(({ stage, title, start, end }) => {
    const number = stage.steps.length > 0 ? `stage ${stage.number}` : "notes";
    return `${number}\n${timing(start, end)}\n${escaped(title) || number}`;
  });
  return file(script, blocks);
}

/** The first line of captions for a guide of that title. */
export function captionsTitle(title: string): string {
  const name = title.replace(/-->|[\r\n]+/g, " ").trim();
  return `WEBVTT${name ? ` ${name}` : ""}`;
}

function file({ title, rate }: Script, blocks: readonly string[]): string {
  return `${[captionsTitle(title), `${CAPTIONS_MARK}, ${rate} words a minute`, ...blocks].join("\n\n")}\n`;
}

/** The step's number, or the stage's with what it is, counted: identifiers must differ. */
function placeOf({ kind, step }: Passage, { stage }: Chapter, known: Map<string, number>): string {
  if (step) return step.number;
  const place = stage.steps.length > 0 ? `${stage.number} ${kind}` : kind;
  const count = (known.get(place) ?? 0) + 1;
  known.set(place, count);
  return count > 1 ? `${place} ${count}` : place;
}

function cuesOf({ lines }: Passage, place: string): string[] {
  return lines.map(({ text, start, end }, index) => {
    const name = lines.length > 1 ? `${place} (${index + 1})` : place;
    return `${name}\n${timing(start, end)}\n${escaped(text)}`;
  });
}

function timing(start: number, end: number): string {
  return `${timestamp(start)} --> ${timestamp(end)}`;
}

/** `00:03:25.040` */
function timestamp(seconds: number): string {
  const ms = Math.round(seconds * 1000);
  const two = (amount: number) => String(Math.floor(amount)).padStart(2, "0");
  const [h, min, s] = [ms / 3_600_000, (ms / 60_000) % 60, (ms / 1000) % 60];
  return `${two(h)}:${two(min)}:${two(s)}.${String(ms % 1000).padStart(3, "0")}`;
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
}
