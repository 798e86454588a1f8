/** Links from a page to pictures, parts lists, further pages and labels. */
import type { CancellationToken, DocumentLink, DocumentLinkParams } from "vscode-languageserver";
import { URI, Utils } from "vscode-uri";
import { type Link, linksOf } from "../../features/links.ts";
import type { Service } from "../../service.ts";
import { resolveReference } from "../../workspace/paths.ts";
import { spanToRange } from "../convert.ts";
import type { Feature, FeatureContext } from "./feature.ts";
import { placesOf } from "./place.ts";

export const links: Feature = (context) => ({
  "textDocument/documentLink": (params: DocumentLinkParams, token) =>
    answer(context, params, token),
});

async function answer(
  context: FeatureContext,
  { textDocument }: DocumentLinkParams,
  token: CancellationToken,
): Promise<DocumentLink[] | null> {
  const [place] = await placesOf(context, textDocument, token);
  if (!place || place.list) return null;
  const { guide, uri, lines } = place;
  return [...linksOf(guide, uri)].flatMap((link) => {
    const target = targetOf(link, uri, context.service);
    return target ? [{ range: spanToRange(link.span, lines), target }] : [];
  });
}

function targetOf(link: Link, page: string, service: Service): string | undefined {
  switch (link.to) {
    case "place": {
      const at = service.lines(link.target.uri)?.positionAt(link.target.span.start);
      return at && `${link.target.uri}#L${at.line + 1},${at.column + 1}`;
    }
    case "file": {
      const found = resolveReference(page, link.path, { folders: [], outsideAllowed: true });
      return "uri" in found ? found.uri : undefined;
    }
    case "picture":
      return pictureTarget(link.url, page);
  }
}

/** An address of the net stays as it is; other schemes are not followed. */
function pictureTarget(url: string, page: string): string | undefined {
  if (/^https?:\/\//i.test(url)) return url;
  if (/^[a-z][a-z0-9+.-]*:/i.test(url) || url.startsWith("//")) return undefined;
  try {
    const path = decodeURIComponent(url.replace(/[?#].*$/, ""));
    return Utils.resolvePath(Utils.dirname(URI.parse(page)), path).toString();
  } catch (error) {
    // A percent sign that begins no character code.
    if (error instanceof URIError) return undefined;
    throw error;
  }
}
