/** `kitquill narration`: holds the cues of a recording against the guide as it is now. */
import { compareRecording, type Difference } from "../publish/narration/recording/compare.ts";
import { readCues } from "../publish/narration/recording/readCues.ts";
import { scriptOf } from "../publish/narration/script.ts";
import { clockTime } from "../publish/narration/time.ts";
import { choice, readArguments, UsageError } from "./arguments.ts";
import { textOf } from "./namedFile.ts";
import { oneGuide } from "./oneGuide.ts";
import type { ExitCode } from "./run.ts";
import type { Terminal } from "./terminal.ts";

const OPTIONS = { format: "string", "lists-outside": "boolean", help: "boolean" } as const;

export async function narration(
  argv: readonly string[],
  terminal: Terminal,
  cwd: string,
): Promise<ExitCode> {
  const args = readArguments(argv, OPTIONS);
  const format = choice(args, "format", ["text", "json"]);
  const [cuesName, guideName, ...more] = args.positionals;
  if (cuesName === undefined || guideName === undefined || more.length > 0) {
    throw new UsageError(
      "`narration` needs the cues of a recording (WebVTT or SubRip) and a guide.",
    );
  }
  const cues = readCues(await textOf(cuesName, cwd));
  if (!cues) {
    throw new UsageError(
      `\`${cuesName}\` holds no captions: its first line does not say \`WEBVTT\`, nor does it begin with a number and times as SubRip (.srt) does. The captions are named first, then the guide.`,
    );
  }
  const { checked } = await oneGuide(guideName, cwd, args.has("lists-outside"));
  const { guide } = checked;
  const differences = compareRecording(scriptOf(guide, undefined), guide, cues);
  terminal.out(format === "json" ? jsonOf(differences) : tableOf(differences));
  return differences.length > 0 ? 1 : 0;
}

function jsonOf(differences: readonly Difference[]): string {
  return `${JSON.stringify({ version: 1, differences }, undefined, 2)}\n`;
}

function tableOf(differences: readonly Difference[]): string {
  if (differences.length === 0) return "The recording says what the guide says.\n";
  const times = differences.map(({ at }) => (at === undefined ? "–" : clockTime(at)));
  const width = Math.max(...times.map(({ length }) => length));
  const lines = differences.map(({ place, message }, index) => {
    const told = place ? `${place[0]!.toUpperCase()}${place.slice(1)} ${message}` : message;
    return `${times[index]!.padStart(width)}  ${told}`;
  });
  const count = differences.length === 1 ? "1 difference" : `${differences.length} differences`;
  return `${lines.join("\n")}\n\n${count} between recording and guide.\n`;
}
