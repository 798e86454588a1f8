/** The pictures of a guide under preview, by the URIs of their files. */
import type { GuideState } from "../model/guideState.ts";
import type { PictureSource } from "../publish/fill/filler.ts";
import { isWrittenOut } from "../publish/html.ts";
import { pictureFile } from "./pictures.ts";

/**
 * Only files in the folders are given, and none that is known to be missing. One that has changed
 * while it was followed gets its edition as a query, so that it is loaded anew.
 */
export function previewPictures(
  guide: GuideState,
  folders: readonly string[],
  editions: ReadonlyMap<string, number>,
): PictureSource {
  return {
    source(pageUri, url) {
      if (isWrittenOut(url)) return url;
      if (guide.missesPicture(pageUri, url)) return undefined;
      const file = pictureFile(pageUri, url, folders);
      const edition = file === undefined ? undefined : editions.get(file);
      return edition === undefined ? file : `${file}?edition=${edition}`;
    },
  };
}
