/** Guides for tests of the model, without files and checks. */
import { GuidePage } from "../../server/src/model/guidePage.ts";
import { GuideState } from "../../server/src/model/guideState.ts";
import { Kit } from "../../server/src/model/kit.ts";
import { readPartsList } from "../../server/src/model/list/read.ts";
import { DEFAULT_SETTINGS } from "../../server/src/service.ts";

/** The guide of one page with that body; `more` goes into the front matter. */
export function guideOf(body: string, list = "Designator,Value\n", more = ""): GuideState {
  const page = new GuidePage("file:///g.md", `---\nparts: p.csv\n${more}---\n\n${body}`);
  for (const _ of page.advance()) void _;
  const parts = readPartsList("file:///p.csv", list, { columns: {} });
  const kit = new Kit([{ board: undefined, list: parts }], page.frontMatter!);
  const guide = new GuideState([page], kit, DEFAULT_SETTINGS);
  guide.update();
  return guide;
}
