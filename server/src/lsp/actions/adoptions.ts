/** Marks the parts that plain text names: those of the step, line, stage or guide at the selection. */
import { adopt } from "../../features/adopt/adopt.ts";
import { scopesAt } from "../../features/adopt/scopes.ts";
import { toAdoptionEdit } from "../adoption.ts";
import type { Offer } from "./offer.ts";

export const adoptions: Offer = function* ({ context, uri, span }) {
  const { service, client } = context;
  const guide = service.guidesOf(uri).find(({ pages }) => pages.some((page) => page.uri === uri));
  if (!guide?.language) return;
  if (guide.pages[0]!.uri === uri && span.start < guide.frontMatter.span.end) {
    yield {
      title: "Mark the parts named in this guide",
      edit: async () => {
        const adoption = adopt(guide);
        return adoption.proposals.length > 0
          ? toAdoptionEdit(adoption, service, client)
          : undefined;
      },
    };
    return;
  }
  for (const scope of scopesAt(guide, uri, span.start)) {
    const adoption = adopt(guide, scope);
    if (adoption.proposals.length === 0) continue;
    yield {
      title: `Mark the parts named in ${scope.name}`,
      edit: toAdoptionEdit(adoption, service, client),
    };
  }
};
