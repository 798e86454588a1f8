/** The trade function whose call the author is writing, and which parameter comes next. */
import type { GuideState } from "../model/guideState.ts";
import type { Span } from "../text/span.ts";
import { TRADE_FUNCTIONS } from "../trade/functions/all.ts";
import { openCall } from "./completion/figureWriting.ts";
import { openingBefore, writingAt } from "./completion/writing.ts";
import { callShape, describeFunction, describeParameter } from "./tradeFunction.ts";

export interface Signature {
  readonly label: string;
  /** Markdown. */
  readonly documentation: string;
  /** In their order; spans count in the label. */
  readonly parameters: readonly { readonly span: Span; readonly documentation: string }[];
  /** Position of the parameter at the cursor. */
  readonly active: number;
}

export function signatureAt(guide: GuideState, uri: string, offset: number): Signature | undefined {
  const writing = writingAt(guide, uri, offset);
  const opening = writing && openingBefore(writing);
  const call = opening?.sign === "{" ? openCall(opening.inside) : undefined;
  const trade = call && TRADE_FUNCTIONS.get(call.name);
  if (!trade) return undefined;
  const { text, parameters } = callShape(trade);
  return {
    label: text,
    documentation: describeFunction(trade),
    parameters: parameters.map((span, index) => ({
      span,
      documentation: describeParameter(trade.parameters[index]!),
    })),
    active: call.index,
  };
}
