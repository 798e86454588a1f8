declare module "webvtt-parser" {
  export interface ParsedCue {
    readonly id: string;
    readonly startTime: number;
    readonly endTime: number;
    readonly text: string;
  }
  export class WebVTTParser {
    parse(
      text: string,
      mode?: "metadata" | "chapters",
    ): {
      readonly cues: readonly ParsedCue[];
      readonly errors: readonly { readonly message: string; readonly line: number }[];
    };
  }
}
