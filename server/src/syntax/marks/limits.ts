/**
 * Keeps the time of a parse in step with the length of the text, whatever the text.
 *
 * CommonMark as micromark reads it takes quadratic time on floods of signs: each `]` looks back for its
 * bracket, each failed link, code span or comment has read to the end of the paragraph, each sign of
 * emphasis looks back for its partner. No guide comes near these limits; beyond them the signs are
 * plain text.
 */
import type {
  Construct,
  ConstructRecord,
  Event,
  FullNormalizedExtension,
  State,
  TokenizeContext,
} from "micromark-util-types";

const LEFT_PARENTHESIS = 40;
const RIGHT_BRACKET = 93;

/** Brackets open at one place; beyond it the outermost are plain text. */
const MAX_OPEN_BRACKETS = 50;
/** Runs of `*`, `_` and `~` in one paragraph. */
const MAX_EMPHASIS = 1_000;
/** Brackets with a round bracket behind them, in one paragraph, that turn out to be no link. */
const MAX_FAILED_LINKS = 100;
/** Backticks, and likewise `<`, in one paragraph that open nothing though much was read to find out. */
const MAX_FAILED_SPANS = 30;
const MUCH = 100;

declare module "micromark-util-types" {
  interface TokenizeContext {
    _tally?: Tally;
  }
  interface Token {
    _gfmAutolinkLiteralWalkedInto?: boolean;
  }
}

/** What has been counted in one paragraph. */
class Tally {
  emphasis = 0;
  failedLinks = 0;
  failedCode = 0;
  failedHtml = 0;
}

function tallyOf(context: TokenizeContext): Tally {
  context._tally ??= new Tally();
  return context._tally;
}

interface Guard {
  /** Whether the constructs of a sign may be tried here; if not, the sign is text. */
  allows(context: TokenizeContext): boolean;
  tried?(context: TokenizeContext): void;
  /** `length` characters were read in vain. */
  failed?(context: TokenizeContext, length: number): void;
}

const opening: Guard = {
  allows: (context) => tallyOf(context).failedLinks < MAX_FAILED_LINKS,
  tried(context) {
    const starts = context._labelStarts;
    // Dropping the outermost keeps the inner ones, which are the likelier links, working.
    if (starts && starts.length > MAX_OPEN_BRACKETS) starts.shift()!._balanced = true;
  },
};

const emphasis: Guard = {
  allows: (context) => tallyOf(context).emphasis < MAX_EMPHASIS,
  tried: (context) => tallyOf(context).emphasis++,
};

const code: Guard = {
  allows: (context) => tallyOf(context).failedCode < MAX_FAILED_SPANS,
  failed(context, length) {
    if (length > MUCH) tallyOf(context).failedCode++;
  },
};

const html: Guard = {
  allows: (context) => tallyOf(context).failedHtml < MAX_FAILED_SPANS,
  failed(context, length) {
    if (length > MUCH) tallyOf(context).failedHtml++;
  },
};

/** Puts the limits on what paragraphs are made of. */
export function limitText({ text }: FullNormalizedExtension): void {
  const copies = new Map<Construct, Construct>();
  const guard = (signs: string, by: Guard, names?: readonly string[]) => {
    for (const sign of signs) {
      const key = sign.charCodeAt(0);
      text[key] = listOf(text[key]).map((construct) => {
        if (names && !names.includes(construct.name ?? "")) return construct;
        // One copy for all signs: what resolves emphasis must run once.
        const copy = copies.get(construct) ?? guarded(construct, by);
        copies.set(construct, copy);
        return copy;
      });
    }
  };
  for (const key of Object.keys(text)) {
    if (!/^\d+$/.test(key) || !isAlphanumeric(Number(key)))
      text[key] = listOf(text[key]).map(merging);
  }
  guard("[!", opening);
  guard("*_~", emphasis, ["attention", "strikethrough"]);
  guard("`", code);
  guard("<", html, ["htmlText"]);
  text[RIGHT_BRACKET] = listOf(text[RIGHT_BRACKET]).map(onlyAfterOpening);
  text[LEFT_PARENTHESIS] = [failedLink, ...listOf(text[LEFT_PARENTHESIS])];
}

export function listOf(constructs: ConstructRecord[string]): Construct[] {
  if (!constructs) return [];
  return Array.isArray(constructs) ? constructs : [constructs];
}

function guarded(construct: Construct, guard: Guard): Construct {
  const { previous, tokenize } = construct;
  return {
    ...construct,
    previous(before) {
      return guard.allows(this) && (previous?.call(this, before) ?? true);
    },
    tokenize(effects, ok, nok) {
      if (!guard.allows(this)) return nok;
      guard.tried?.(this);
      const start = this.now().offset;
      const failed: State = (at) => {
        guard.failed?.(this, this.now().offset - start);
        return nok(at);
      };
      return tokenize.call(this, effects, ok, failed);
    },
  };
}

/** A construct before which neighbouring stretches of text are made one. */
function merging(construct: Construct): Construct {
  const { previous } = construct;
  return {
    ...construct,
    previous(before) {
      mergeText(this.events);
      return previous?.call(this, before) ?? true;
    },
  };
}

/**
 * Makes one token of the last two, where both are text. micromark does so itself at the end of a
 * paragraph, but each time moves all that follows.
 */
function mergeText(events: Event[]): void {
  const last = events.at(-1);
  if (last?.[1].type !== "data") return;
  const own = last[0] === "enter" ? 1 : 2;
  for (;;) {
    const before = events[events.length - own - 1];
    if (before?.[0] !== "exit" || before[1].type !== "data") return;
    last[1].start = before[1].start;
    // GFM's autolinks note here how far back they have looked for brackets.
    if (before[1]._gfmAutolinkLiteralWalkedInto) last[1]._gfmAutolinkLiteralWalkedInto = true;
    events.splice(events.length - own - 2, 2);
  }
}

function isAlphanumeric(code: number): boolean {
  return (code >= 48 && code <= 57) || (code >= 65 && code <= 90) || (code >= 97 && code <= 122);
}

/** A `]` without a bracket to close is text, without a look at all that stands before it. */
function onlyAfterOpening(construct: Construct): Construct {
  const { previous } = construct;
  return {
    ...construct,
    previous(before) {
      const open = this._labelStarts?.some((start) => !start._balanced) ?? false;
      return open && (previous?.call(this, before) ?? true);
    },
  };
}

/** Counts the brackets behind which a round bracket was left over. */
const failedLink: Construct = {
  previous(before) {
    if (before === RIGHT_BRACKET) tallyOf(this).failedLinks++;
    return false;
  },
  tokenize: (_effects, _ok, nok) => nok,
};
