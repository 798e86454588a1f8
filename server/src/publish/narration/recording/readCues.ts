/**
 * Reads the cues of a recording's captions: their times and what they say. They come as WebVTT, or as
 * SubRip (.srt), which has numbered blocks of the same kind and no header.
 */
import { MappedText } from "../../../syntax/marks/mappedText.ts";
import { CAPTIONS_MARK } from "../webvtt.ts";

export interface Cue {
  /** Seconds from the beginning of the recording. */
  readonly start: number;
  readonly text: string;
}

export interface ReadCues {
  readonly cues: readonly Cue[];
  /** Whether a guide's narration was published so, and the words are those of a script. */
  readonly isScript: boolean;
}

/** `1:02:03.450 --> …`; hours may be missing. */
const TIMING = /^(?:(\d{1,4}):)?(\d\d):(\d\d)[.,](\d{3})[ \t]+-->/;

/** How SubRip begins: its first number, and times with a decimal comma (common practice). */
const SUBRIP = /^\s*\d+[ \t]*\n\d{1,4}:\d\d:\d\d,\d{3}[ \t]+-->/;

/** Undefined for a text that is neither. Blocks that are not cues are passed over. */
export function readCues(source: string): ReadCues | undefined {
  const text = source
    .normalize("NFC")
    .replace(/^\uFEFF/, "")
    .replace(/\r\n?/g, "\n");
  if (!/^WEBVTT(?:[ \t\n]|$)/.test(text) && !SUBRIP.test(text)) return undefined;
  const blocks = text.split(/\n{2,}/);
  const isScript = blocks.some((block) => block.startsWith(CAPTIONS_MARK));
  return { cues: blocks.flatMap((block) => readCue(block) ?? []), isScript };
}

function readCue(block: string): Cue | undefined {
  const lines = block.split("\n").filter((line) => line !== "");
  const at = lines.findIndex((line) => TIMING.test(line));
  // Before the times stands a cue's identifier at most.
  if (at < 0 || at > 1) return undefined;
  const [, h, min, s, ms] = TIMING.exec(lines[at]!)!;
  const start = Number(h ?? 0) * 3600 + Number(min) * 60 + Number(s) + Number(ms) / 1000;
  const said = lines
    .slice(at + 1)
    .join(" ")
    .replace(/<[^<>]*>/g, "");
  return { start, text: MappedText.decode([{ raw: said, offset: 0, ending: "" }]).text };
}
