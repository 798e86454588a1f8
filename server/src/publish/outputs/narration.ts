/** What is said in a video of the build: the script, its captions and its chapters. */
import { type Script, scriptOf } from "../narration/script.ts";
import { SCRIPT_MARK, scriptText } from "../narration/scriptText.ts";
import { CAPTIONS_MARK, captions, chapterTrack } from "../narration/webvtt.ts";
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
    return {
      files: [
        {
          name: "narration.txt",
          content: () => scriptText(script(), guide),
          mark: SCRIPT_MARK,
        },
        { name: "narration.vtt", content: () => captions(script()), mark: CAPTIONS_MARK },
        {
          name: "narration-chapters.vtt",
          content: () => chapterTrack(script()),
          mark: CAPTIONS_MARK,
        },
      ],
      faults: [],
    };
  },
} as const satisfies Output;
