/** Publishes a guide that has been read: finds its pictures and writes the files of the publication. */
import type { GuideState } from "../model/guideState.ts";
import type { OutputName } from "../publish/outputs/all.ts";
import type { PublicationWithWarnings, PublishedFile } from "../publish/outputs/output.ts";
import type { PackBy } from "../publish/packing/packingList.ts";
import { InlinePictures, PicturesBeside } from "../publish/pictures.ts";
import { Templates } from "../publish/piece/templates.ts";
import { publish, showsPictures } from "../publish/publication.ts";
import { type Address, loadPicture, type PictureFiles } from "./publishedPictures.ts";

export interface PublishRequest {
  readonly outputs: readonly OutputName[];
  readonly picturesBeside: boolean;
  /** Of a narration; undefined for the usual rate of the guide's language. */
  readonly wordsPerMinute: number | undefined;
  /** How the packing list groups; undefined leaves that to the list and the guide. */
  readonly packBy: PackBy | undefined;
  /** Errors that the checks found; the page says so. */
  readonly errors: number;
  /** Folders whose pictures may be read. */
  readonly folders: readonly string[];
}

/** So many pictures are read at a time: most of it is waiting for the disk. */
const AT_A_TIME = 8;

/** Called before some more pictures are read; it may reject, which ends the publishing. */
export type OnPicture = (done: number, of: number) => Promise<void>;

/** The guide may change while its pictures are read; all files are of the state that it has then. */
export async function publishGuide(
  guide: GuideState,
  request: PublishRequest,
  files: PictureFiles,
  onPicture: OnPicture = async () => {},
): Promise<PublicationWithWarnings> {
  const { errors, outputs, wordsPerMinute, packBy } = request;
  const beside = new PicturesBeside();
  const pictures = request.picturesBeside ? beside : new InlinePictures();
  const inPage = showsPictures(outputs, "pictures");
  const isBeside = showsPictures(outputs, "picturesBeside") || (inPage && pictures === beside);
  let templates: Templates;
  let pieces: GuideState["pieces"];
  const known = new Set<string>();
  const warnings: string[] = [];
  do {
    pieces = guide.pieces;
    templates = new Templates(guide);
    const all = inPage || isBeside ? distinct(templates.pictures(pieces)) : [];
    const wanted = all.filter((address) => !known.has(keyOf(address)));
    for (let done = 0; done < wanted.length; done += AT_A_TIME) {
      await onPicture(done, wanted.length);
      const some = wanted.slice(done, done + AT_A_TIME);
      for (const address of some) known.add(keyOf(address));
      for (const loaded of await Promise.all(
        some.map((address) => loadPicture(address, request.folders, files)),
      )) {
        if (loaded.warning !== undefined) warnings.push(loaded.warning);
        if (!loaded.picture) continue;
        pictures.add(loaded.picture);
        if (isBeside && pictures !== beside) beside.add(loaded.picture);
      }
    }
  } while (guide.pieces !== pieces);
  const own = { wordsPerMinute, packBy, errors };
  const context = { guide, templates, pictures, picturesBeside: beside, ...own };
  const { files: written, faults } = publish(context, outputs);
  return { files: isBeside ? [...written, ...filesOf(beside)] : written, faults, warnings };
}

function filesOf({ files }: PicturesBeside): PublishedFile[] {
  return [...files].map(([name, bytes]) => ({ name, content: () => bytes, mark: undefined }));
}

function distinct(addresses: readonly Address[]): Address[] {
  return [...new Map(addresses.map((one) => [keyOf(one), one])).values()];
}

function keyOf({ pageUri, url }: Address): string {
  return `${pageUri}\n${url}`;
}
