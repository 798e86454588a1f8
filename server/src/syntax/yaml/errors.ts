/** What the YAML parser complains about, in words for an author who does not know YAML. */
import type { YAMLError } from "yaml";
import type { Span } from "../../text/span.ts";
import type { FrontMatterProblem } from "../frontMatter.ts";
import { quoteYaml } from "./tree.ts";

/** No key of a guide comes near. */
export const TOO_DEEP =
  "This is nested too deeply to be read. Remove brackets or indentation: no key of a guide needs so many levels.";

export const KEY_MISSING =
  "A key is missing here. Write a key, a colon and a space before the value: `title: Heron 40`.";

const WORDS: { readonly [code in YAMLError["code"]]?: string } = {
  TAB_AS_INDENT: "YAML does not allow a tab at a line's start. Indent with spaces.",
  BAD_INDENT:
    "This line is not indented as its neighbours are, so YAML cannot tell what it belongs to. Indent them alike.",
  MULTILINE_IMPLICIT_KEY:
    "YAML reads these lines as one key. Each line needs a key, a colon and a space: `title: Heron 40`.",
  MULTIPLE_DOCS:
    "A line that begins with `---` ends the front matter. Remove it, or put the text in quotes.",
  TAG_RESOLVE_FAILED: "YAML takes a word that begins with `!` for a tag. Put the value in quotes.",
  BAD_DQ_ESCAPE:
    "In double quotes a backslash begins an escape, and this one is unknown. Use single quotes, or double the backslash.",
  RESOURCE_EXHAUSTION: TOO_DEEP,
};

/** The problem that a parser error means, its place moved by `offset` into the page's text. */
export function explainYamlError(error: YAMLError, source: string, body: Span): FrontMatterProblem {
  const start = Math.min(error.pos[0] + body.start, body.end);
  const end = Math.max(start, Math.min(error.pos[1] + body.start, body.end));
  const span = { start, end };
  const colons = textWithColons(error, source, body);
  if (colons) return secondColon(colons, source);
  switch (error.code) {
    case "BAD_SCALAR_START": {
      const message = `YAML gives \`${source[start]}\` at the start of a value a meaning of its own. Put the value in quotes.`;
      return quoting(message, restOfValue(start, source, body.end), source);
    }
    case "MISSING_CHAR":
      return missing(error.message, span, source, body);
    case "BAD_INDENT":
      return /end with a [}\]]/.test(error.message)
        ? unclosedBracket(start, source, body)
        : { span, message: WORDS.BAD_INDENT! };
    case "UNEXPECTED_TOKEN":
      return /flow-(?:map|seq)-end/.test(error.message)
        ? surplusBracket(span, source)
        : notYaml(error, span);
    default:
      return WORDS[error.code] ? { span, message: WORDS[error.code]! } : notYaml(error, span);
  }
}

/** The text in which the error has found a colon too many, undefined for other errors. */
export function textWithColons(error: YAMLError, source: string, body: Span): Span | undefined {
  const start = error.pos[0] + body.start;
  if (error.code === "BLOCK_AS_IMPLICIT_KEY") return restOfLine(start, source, body.end);
  return error.code === "BLOCK_IN_FLOW" ? restOfValue(start, source, body.end) : undefined;
}

function notYaml({ message }: YAMLError, span: Span): FrontMatterProblem {
  return { span, message: `This is not YAML: ${lowerFirst(message)}.` };
}

/** The text in `span` holds a colon that YAML takes for one behind a key. */
function secondColon(span: Span, source: string): FrontMatterProblem {
  const text = source.slice(span.start, span.end);
  if (!text.includes(":")) return { span, message: WORDS.BAD_INDENT! };
  const message =
    "YAML takes the second colon of this line for another key. Put the text in quotes.";
  return quoting(message, span, source);
}

function missing(said: string, span: Span, source: string, body: Span): FrontMatterProblem {
  if (/map values/.test(said)) {
    return { span, message: KEY_MISSING };
  }
  const quote = /["']/.exec(said)?.[0];
  const open = quote ? source.lastIndexOf(quote, span.start - 1) : -1;
  if (open < body.start)
    return { span, message: `Something is missing here: ${lowerFirst(said)}.` };
  const message = "This quote is opened and never closed. Write another one after the text.";
  return { span: restOfLine(open, source, body.end), message };
}

function unclosedBracket(start: number, source: string, body: Span): FrontMatterProblem {
  const open = openBracket(source.slice(body.start, start));
  if (open < 0) return { span: { start, end: start }, message: WORDS.BAD_INDENT! };
  const at = body.start + open;
  const close = source[at] === "{" ? "}" : "]";
  const { end } = restOfLine(at, source, body.end);
  return {
    span: { start: at, end },
    message: `\`${source[at]}\` is opened here and never closed. Write \`${close}\` after the last entry.`,
    suggestion: { title: `Write ${close}`, span: { start: end, end }, text: close },
  };
}

/** Offset of the last bracket that the text leaves open, or -1. */
function openBracket(text: string): number {
  let closed = 0;
  for (let i = text.length - 1; i >= 0; i--) {
    if (text[i] === "}" || text[i] === "]") closed++;
    else if (text[i] === "{" || text[i] === "[") {
      if (closed === 0) return i;
      closed--;
    }
  }
  return -1;
}

function surplusBracket(span: Span, source: string): FrontMatterProblem {
  const bracket = source.slice(span.start, span.end);
  return {
    span,
    message: `This \`${bracket}\` closes nothing. Remove it.`,
    suggestion: { title: `Remove ${bracket}`, span, text: "" },
  };
}

function quoting(message: string, span: Span, source: string): FrontMatterProblem {
  const text = source.slice(span.start, span.end);
  return {
    span,
    message,
    suggestion: { title: `Put ${text} in quotes`, span, text: quoteYaml(text) },
  };
}

/** From an offset to the end of its line, without a comment and spaces at the end. */
function restOfLine(start: number, source: string, limit: number): Span {
  return trimmedUpTo(/[\r\n]|[ \t]#/g, start, source, limit);
}

function restOfValue(start: number, source: string, limit: number): Span {
  return trimmedUpTo(/[\r\n,}\]]|[ \t]#/g, start, source, limit);
}

function trimmedUpTo(stop: RegExp, start: number, source: string, limit: number): Span {
  stop.lastIndex = start;
  const end = Math.min(stop.exec(source)?.index ?? limit, limit);
  return { start, end: start + source.slice(start, end).trimEnd().length };
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
