/** What a revised parts list touches in the guides on it, and its new designators carried through them. */
import type { RevisedGuide } from "../../features/revision/revision.ts";
import { TOUCHED_KINDS, type Touched } from "../../features/revision/touched.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Service } from "../../service.ts";
import { lineEdits } from "../../text/lineEdits.ts";
import { LineIndex } from "../../text/lines.ts";
import type { Span } from "../../text/span.ts";
import { canonicalUri, fileName } from "../../workspace/paths.ts";
import type { ListContent } from "../../workspace/revisedSources.ts";
import { rewritingRefused } from "../../workspace/rewriting.ts";
import { fromBase64 } from "../clientFiles.ts";
import { spanToRange } from "../convert.ts";
import {
  RENUMBER,
  REVISE,
  type RenumberParams,
  type RenumberResult,
  type ReviseParams,
  type ReviseResult,
  type SentEdit,
  type SentTouched,
} from "../protocol.ts";
import type { Feature, FeatureContext } from "./feature.ts";

export const revision: Feature = (context) => ({
  [REVISE]: (params: ReviseParams) => revise(context, params),
  [RENUMBER]: (params: RenumberParams) => renumber(context, params),
});

async function revise(context: FeatureContext, params: ReviseParams): Promise<ReviseResult> {
  const compared = await comparedLists(context, params);
  if ("problem" in compared) return compared;
  const { service, old, fresh } = compared;
  const touched: SentTouched[] = [];
  const renumbered = new Map<string, { from: string; to: string; board: string }>();
  for (const { guide, list, sheet } of compared.guides) {
    const [was, is] = [withSheet(old, sheet), fresh && withSheet(fresh, sheet)];
    const revised = await service.revise(guide, list, was, is);
    if ("problem" in revised) return revised;
    const files = new Places(service, list, canonicalUri(params.list.uri), revised);
    touched.push(...revised.touched.map((one) => sent(one, files)));
    for (const { from, to } of revised.changes.renumbered) {
      const pair = { from: from.name, to: to.name, board: from.board };
      renumbered.set(`${pair.board}/${pair.from}`, pair);
    }
  }
  return { touched, renumbered: [...renumbered.values()] };
}

async function renumber(context: FeatureContext, params: RenumberParams): Promise<RenumberResult> {
  const compared = await comparedLists(context, params);
  if ("problem" in compared) return compared;
  const { service, old, guides } = compared;
  const edits: SentEdit[] = [];
  for (const { guide, list, sheet } of guides) {
    const texts = await service.renumber(guide, list, withSheet(old, sheet), params.pairs);
    for (const [uri, after] of texts) {
      const problem = await service.rewriteProblem(uri);
      if (problem !== undefined) {
        return { problem: rewritingRefused(uri, problem) };
      }
      const lines = service.lines(uri)!;
      for (const { span, text } of lineEdits(service.text(uri)!, after)) {
        edits.push({ uri, range: spanToRange(span, lines), text, version: service.version(uri) });
      }
    }
  }
  return { edits };
}

interface Compared {
  readonly service: Service;
  /** With the list of theirs that is revised, by the URI it has, and of a workbook its sheet. */
  readonly guides: readonly { guide: GuideState; list: string; sheet: string | undefined }[];
  readonly old: ListContent;
  /** Set where the guides do not name the new list yet. */
  readonly fresh: ListContent | undefined;
}

async function comparedLists(
  context: FeatureContext,
  { list, old }: ReviseParams,
): Promise<Compared | { readonly problem: string }> {
  const contents = {
    old: { content: fromBase64(old.base64) },
    fresh: { content: fromBase64(list.base64) },
  };
  for (const named of [list, old]) {
    const uri = canonicalUri(named.uri);
    const { service, guides } = await guidesOn(context, uri);
    if (guides.length === 0) continue;
    const fresh = named === list ? undefined : contents.fresh;
    return {
      service,
      guides: guides.flatMap((guide) => listsAt(guide, uri)),
      old: contents.old,
      fresh,
    };
  }
  return {
    problem: `No guide names \`${fileName(list.uri)}\` as its parts list, so nothing can be touched.`,
  };
}

/** Guides that are followed, else those of the workspace, read for this once. */
async function guidesOn({ service, caughtUp, guidesNaming }: FeatureContext, uri: string) {
  await caughtUp();
  const guides = service.guidesOf(uri);
  if (guides.length > 0) return { service, guides };
  const apart = service.apart();
  for (const guide of await guidesNaming((named) => named === uri, uri)) apart.follow(guide);
  await apart.settle();
  return { service: apart, guides: apart.guidesOf(uri) };
}

/** Of a workbook each sheet that the guide names. */
function listsAt(guide: GuideState, uri: string) {
  return guide.lists
    .filter((list) => list.uri === uri || list.uri.startsWith(`${uri}#`))
    .map((list) => {
      const sheet =
        list.uri === uri ? undefined : decodeURIComponent(list.uri.slice(uri.length + 1));
      return { guide, list: list.uri, sheet };
    });
}

function withSheet({ content }: ListContent, sheet: string | undefined): ListContent {
  return sheet === undefined ? { content } : { content, sheet };
}

/** Where places are shown: of the new list in its own file, also where the guide does not name that. */
class Places {
  readonly #service: Service;
  readonly #list: string;
  readonly #shown: string;
  readonly #listText: string;
  #listLines: LineIndex | undefined;

  constructor(service: Service, list: string, shown: string, { fresh }: RevisedGuide) {
    this.#service = service;
    this.#list = list;
    this.#shown = shown;
    this.#listText = fresh.text;
  }

  spot(uri: string, span: Span) {
    if (uri !== this.#list) return { uri, range: spanToRange(span, this.#service.lines(uri)!) };
    this.#listLines ??= new LineIndex(this.#listText);
    return { uri: this.#shown, range: spanToRange(span, this.#listLines) };
  }

  text(uri: string, { start, end }: Span): string {
    const text = uri === this.#list ? this.#listText : (this.#service.text(uri) ?? "");
    return text.slice(start, end);
  }

  version(uri: string): number | undefined {
    return this.#service.version(uri);
  }
}

function sent(touched: Touched, places: Places): SentTouched {
  const { kind, step, message, uri, span, findings, fixes } = touched;
  return {
    kind: TOUCHED_KINDS[kind],
    ...(step && { step: step.number }),
    message,
    spot: places.spot(uri, span),
    source: step?.source ?? places.text(uri, span),
    isOpen: findings.length > 0,
    fixes: fixes().map(({ title, edits }) => ({
      title,
      edits: edits.flatMap(({ uri, edits: own }) =>
        own.map(({ span, text }): SentEdit => {
          return { ...places.spot(uri, span), text, version: places.version(uri) };
        }),
      ),
    })),
  };
}
