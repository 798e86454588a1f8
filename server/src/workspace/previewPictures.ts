/** The pictures of a guide under preview, by the URIs of their files. */
import type { GuideState } from "../model/guideState.ts";
import type { PictureSource } from "../publish/fill/filler.ts";
import { isWrittenOut } from "../publish/html.ts";
import { pictureFile } from "./pictures.ts";

/** Only files in the folders are given, and none that is known to be missing. */
export function previewPictures(guide: GuideState, folders: readonly string[]): PictureSource {
  return {
    source(pageUri, url) {
      if (isWrittenOut(url)) return url;
      return guide.missesPicture(pageUri, url) ? undefined : pictureFile(pageUri, url, folders);
    },
  };
}
