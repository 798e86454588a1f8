/** What is said in a video of the build: the script, its captions and its chapters. */
import { type Script, scriptOf } from "../narration/script.ts";
import { SCRIPT_MARK, scriptText } from "../narration/scriptText.ts";
import { CAPTIONS_MARK, captions, captionsTitle, chapterTrack } from "../narration/webvtt.ts";
import { titleOf } from "../title.ts";
import type { Output } from "./output.ts";

export const NARRATION = {
  name: "narration",
  summary: "the script of a video, with captions and chapters",
  write: ({ guide, wordsPerMinute }) => {
    let made: Script | undefined;
    const script = () => {
      made ??= scriptOf(guide, wordsPerMinute);
      return made;
    };
    const title = titleOf(guide);
    const titleMark = title && captionsTitle(title);
    return {
      files: [
        {
          name: "narration.txt",
          content: () => scriptText(script(), guide),
          mark: SCRIPT_MARK,
        },
        {
          name: "narration.vtt",
          content: () => captions(script()),
          mark: CAPTIONS_MARK,
          titleMark,
        },
        {
          name: "narration-chapters.vtt",
          content: () => chapterTrack(script()),
          mark: CAPTIONS_MARK,
          titleMark,
        },
      ],
      faults: [],
    };
  },
} as const satisfies Output;
