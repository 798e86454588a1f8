/**
 * Keeps quotes, lists and footnotes from nesting without end. micromark goes through all open ones on
 * each line, and what reads the tree later would run out of stack. Beyond the limits their signs are
 * plain text; no guide comes near.
 */
import type {
  Construct,
  FullNormalizedExtension,
  State,
  TokenizeContext,
} from "micromark-util-types";
import { listOf } from "./limits.ts";

/** Quotes, list items and footnotes within each other. */
const MAX_NESTING = 100;
/** Of these, how many may open on one line. */
const MAX_OPENED = 10;

declare module "micromark-util-types" {
  interface TokenizeContext {
    _line?: LineTally;
  }
}

/** The containers counted on a line. */
class LineTally {
  readonly number: number;
  /** How far containers have been counted. */
  offset = -1;
  opened = 0;
  continued = 0;

  constructor(number: number) {
    this.number = number;
  }
}

/** Puts the limits on the containers of a document. */
export function limitNesting({ document }: FullNormalizedExtension): void {
  for (const sign of Object.keys(document)) {
    document[sign] = listOf(document[sign]).map(nested);
  }
}

/** A container that does not open where too many are open. */
function nested(construct: Construct): Construct {
  const { tokenize, continuation } = construct;
  return {
    ...construct,
    tokenize(effects, ok, nok) {
      const line = lineOf(this);
      if (line.opened >= MAX_OPENED || line.opened + line.continued >= MAX_NESTING) return nok;
      return tokenize.call(this, effects, counting(this, "opened", ok), nok);
    },
    ...(continuation && {
      continuation: {
        ...continuation,
        tokenize(effects, ok, nok) {
          return continuation.tokenize.call(this, effects, counting(this, "continued", ok), nok);
        },
      },
    }),
  };
}

/** The containers of the line in hand. */
function lineOf(context: TokenizeContext): LineTally {
  const { line } = context.now();
  if (context._line?.number !== line) context._line = new LineTally(line);
  return context._line;
}

/** Counts a success. A container is tried twice at one place, so only a move forward counts. */
function counting(context: TokenizeContext, what: "opened" | "continued", ok: State): State {
  return (code) => {
    const line = lineOf(context);
    const { offset } = context.now();
    if (offset > line.offset) line[what]++;
    line.offset = Math.max(line.offset, offset);
    return ok(code);
  };
}
