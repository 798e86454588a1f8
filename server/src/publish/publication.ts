/** All that can be published of a guide: the files of a publication, by what they are for. */
import type { GuideState } from "../model/guideState.ts";
import type { PictureSource } from "./fill/filler.ts";
import { guidePage, HTML_MARK } from "./page/page.ts";
import type { Templates } from "./piece/templates.ts";

export interface PublishedFile {
  /** Relative to the output folder, with `/`. */
  readonly name: string;
  readonly content: string | Uint8Array;
  /**
   * What the beginning of a file of ours holds, so that it may be replaced; undefined for a picture,
   * which is named after its content.
   */
  readonly mark: string | undefined;
}

export interface PublishContext {
  readonly guide: GuideState;
  readonly templates: Templates;
  readonly pictures: PictureSource;
  /** Errors that the checks found, when it is published all the same. */
  readonly errors: number;
}

type Writer = (context: PublishContext) => readonly PublishedFile[];

const WRITERS = {
  guide: ({ guide, templates, pictures, errors }) => {
    const content = guidePage(guide, templates, { pictures, errors });
    return [{ name: "guide.html", content, mark: HTML_MARK }];
  },
} as const satisfies Readonly<Record<string, Writer>>;

export type Output = keyof typeof WRITERS;

export const OUTPUTS = Object.keys(WRITERS) as readonly Output[];

export function publish(context: PublishContext, outputs: readonly Output[]): PublishedFile[] {
  return outputs.flatMap((output) => WRITERS[output](context));
}
