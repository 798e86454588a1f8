/** Reads `all R`, `rest of 100n`, and the parts excepted from them. */
import type { PartItem, RangeItem, SetItem } from "../dialect.ts";
import type { MappedText } from "./mappedText.ts";
import { type Carry, splitBoard } from "./parts.ts";

/** The head of a set; parts to except may follow in the items behind it. */
export interface SetHead {
  readonly item: SetItem;
  readonly certain: boolean;
  /** The text behind `except`; absent without that word. */
  readonly except?: MappedText;
}

const WHICH = /^(all|rest\s+of)\s+(?=\S)/i;
const EXCEPT = /\s+except(?:\s+|$)/i;
const CLASS = /^\p{Lu}{1,5}$/u;
/** `100n`, `4k7`, `p33`, `10 kΩ`, `BC547`, `1N4148`: one word with a digit, or a number and its unit. */
const VALUE_WORD = /^(?=\S*\d)(?=\S*[\p{L}%Ω])[\p{L}\d.,%Ωµ°+/-]+$/u;
const VALUE_WITH_UNIT = /^\d+(?:[.,]\d+)?\s+[pnuµμmkKMG]?(?:F|H|Ω|Ω|ohms?|V|A|W|Hz|R|%)$/i;
/** One word without lower-case prose in it: the parts list may know it. */
const DOUBTFUL = /^(?=.*[\p{Lu}\d])[\p{L}\d.,+/-]+$/u;

export function readSet(text: MappedText, carry: Carry): SetHead | undefined {
  const outer = WHICH.test(text.text)
    ? { rest: text, board: carry.board }
    : splitBoard(text, carry);
  const which = WHICH.exec(outer.rest.text);
  if (!which) return undefined;
  const body = outer.rest.slice(which[0].length);
  const except = EXCEPT.exec(body.text);
  const inner = splitBoard(except ? body.slice(0, except.index) : body, { board: outer.board });
  const of = inner.rest.text.trim();
  const certain = CLASS.test(of) || VALUE_WORD.test(of) || VALUE_WITH_UNIT.test(of);
  if (!certain && !DOUBTFUL.test(of)) return undefined;
  carry.board = inner.board;
  carry.letters = undefined;
  carry.stem = undefined;
  const item: SetItem = {
    kind: "set",
    span: (except ? text.slice(0, endOf(text, body, except.index)) : text).span(),
    ...(inner.board === undefined ? {} : { board: inner.board }),
    which: /^all/i.test(which[1]!) ? "all" : "rest",
    of,
    except: [],
  };
  if (!except) return { item, certain };
  return { item, certain, except: body.slice(except.index + except[0].length) };
}

/** The set with one more part excepted; its span reaches to that part. */
export function exceptFrom(set: SetItem, part: PartItem | RangeItem): SetItem {
  return {
    ...set,
    span: { start: set.span.start, end: part.span.end },
    except: [...set.except, part],
  };
}

function endOf(text: MappedText, body: MappedText, index: number): number {
  return text.text.length - body.text.length + index;
}
