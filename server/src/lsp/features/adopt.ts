/** Tells the client which parts of a guide can be marked where its plain text names them. */
import { adopt as adoptGuide } from "../../features/adopt/adopt.ts";
import { canonicalUri } from "../../workspace/paths.ts";
import { leftToAuthor, marksOf } from "../adoption.ts";
import { ADOPT, type AdoptParams, type AdoptResult } from "../protocol.ts";
import type { Feature } from "./feature.ts";

export const adopt: Feature = ({ service, caughtUp }) => ({
  [ADOPT]: async ({ uri }: AdoptParams): Promise<AdoptResult> => {
    await caughtUp();
    const named = canonicalUri(uri);
    const guide = service
      .guidesOf(named)
      .find(({ pages }) => pages.some((one) => one.uri === named));
    if (!guide) return null;
    const adoption = adoptGuide(guide);
    return { marks: marksOf(adoption, service), left: leftToAuthor(adoption) };
  },
});
