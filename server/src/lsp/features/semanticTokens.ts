/** Colours marks by role, parts in the prose, figures and signal words; after an edit only what is new. */
import type {
  CancellationToken,
  SemanticTokens,
  SemanticTokensDelta,
  SemanticTokensDeltaParams,
  SemanticTokensParams,
  SemanticTokensRangeParams,
} from "vscode-languageserver";
import { rangeToSpan } from "../convert.ts";
import { changedData, tokenData } from "../tokenData.ts";
import type { Feature, FeatureContext } from "./feature.ts";
import { type Place, placesOf } from "./place.ts";

export const semanticTokens: Feature = (context) => {
  const pages = new TokenPages(context);
  return {
    "textDocument/semanticTokens/full": (params: SemanticTokensParams, token) =>
      pages.full(params, token),
    "textDocument/semanticTokens/full/delta": (params: SemanticTokensDeltaParams, token) =>
      pages.delta(params, token),
    "textDocument/semanticTokens/range": (params: SemanticTokensRangeParams, token) =>
      pages.range(params, token),
  };
};

/** So many pages are remembered for their changes. */
const MOST_PAGES = 20;

class TokenPages {
  readonly #context: FeatureContext;
  readonly #sent = new Map<string, { readonly id: string; readonly data: Uint32Array }>();
  #count = 0;

  constructor(context: FeatureContext) {
    this.#context = context;
  }

  async full(params: SemanticTokensParams, token: CancellationToken): Promise<SemanticTokens> {
    const data = await this.#dataOf(params, token);
    if (!data) return { data: [] };
    return { resultId: this.#keep(params, data), data: [...data] };
  }

  async delta(
    params: SemanticTokensDeltaParams,
    token: CancellationToken,
  ): Promise<SemanticTokens | SemanticTokensDelta> {
    const data = await this.#dataOf(params, token);
    if (!data) return { data: [] };
    const before = this.#sent.get(params.textDocument.uri);
    const resultId = this.#keep(params, data);
    if (before?.id !== params.previousResultId) return { resultId, data: [...data] };
    const edits = changedData(before.data, data).map((edit) => ({
      ...edit,
      data: edit.data as number[],
    }));
    return { resultId, edits };
  }

  async range(
    { textDocument, range }: SemanticTokensRangeParams,
    token: CancellationToken,
  ): Promise<SemanticTokens> {
    const [place] = await placesOf(this.#context, textDocument, token);
    if (!place || place.list) return { data: [] };
    const span = rangeToSpan(range, place.lines);
    const pieces = piecesOf(place).filter(
      ({ start, length }) => start < span.end && start + length > span.start,
    );
    return { data: [...encode(place, pieces)] };
  }

  /** Undefined for Markdown that is no guide. */
  async #dataOf(
    { textDocument }: { readonly textDocument: { readonly uri: string } },
    token: CancellationToken,
  ): Promise<Uint32Array | undefined> {
    const [place] = await placesOf(this.#context, textDocument, token);
    return place && !place.list ? encode(place, piecesOf(place)) : undefined;
  }

  #keep({ textDocument: { uri } }: SemanticTokensParams, data: Uint32Array): string {
    const id = `${++this.#count}`;
    this.#sent.delete(uri);
    this.#sent.set(uri, { id, data });
    if (this.#sent.size > MOST_PAGES) this.#sent.delete(this.#sent.keys().next().value!);
    return id;
  }
}

function piecesOf({ guide, uri }: Place) {
  return guide.pieces.filter((piece) => piece.page.uri === uri);
}

function encode({ guide, lines }: Place, pieces: ReturnType<typeof piecesOf>): Uint32Array {
  const [first] = pieces;
  return first ? tokenData(pieces, guide, lines.positionAt(first.start).line) : new Uint32Array();
}
