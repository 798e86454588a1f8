/** An output: something that leaves the author's desk, made of the guide as one file or several. */
import type { GuideState } from "../../model/guideState.ts";
import type { Content } from "../content.ts";
import type { PagePictures } from "../fill/filler.ts";
import type { PackBy } from "../packing/packingList.ts";
import type { Templates } from "../piece/templates.ts";

export interface PublishedFile {
  /** Relative to the output folder, with `/`. */
  readonly name: string;
  /** Made when it is wanted, of the guide as it is then: not all the files of a long guide are held at once. */
  content(): Content;
  /**
   * What the beginning of a file of ours holds, so that it may be replaced; undefined for a picture,
   * which is named after its content.
   */
  readonly mark: string | undefined;
  /** What the beginning holds of the guide's title, so that another guide's file is told apart. */
  readonly titleMark?: string | undefined;
}

export interface Publication {
  readonly files: readonly PublishedFile[];
  /** What is wrong with what the files say, a sentence each; any of them stops publishing. */
  readonly faults: readonly string[];
}

/** A publication with what stops nobody from publishing it. */
export interface PublicationWithWarnings extends Publication {
  /** What readers will miss, a sentence each. */
  readonly warnings: readonly string[];
}

export interface PublishContext {
  readonly guide: GuideState;
  readonly templates: Templates;
  /** Pictures as the author wants them: written into the page, or beside it. */
  readonly pictures: PagePictures;
  /** Pictures as files beside, for what cannot hold them. */
  readonly picturesBeside: PagePictures;
  /** Of a narration; undefined for the usual rate. */
  readonly wordsPerMinute: number | undefined;
  /** How the packing list groups; undefined leaves that to the list and the guide. */
  readonly packBy: PackBy | undefined;
  /** Errors that the checks found, when it is published all the same. */
  readonly errors: number;
}

export interface Output {
  /** As `--only` takes it. */
  readonly name: string;
  /** What it is, and for whom, in a few words: for help texts. */
  readonly summary: string;
  /** Which of the pictures it shows, if any. */
  readonly shows?: "pictures" | "picturesBeside";
  write(context: PublishContext): Publication;
}
