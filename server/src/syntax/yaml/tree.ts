/** The plain tree that the YAML of a front matter is read into. All spans count in the page's text. */
import type { Span } from "../../text/span.ts";

export type YamlNode = YamlText | YamlList | YamlMap | YamlNothing;

export interface YamlText {
  readonly kind: "text";
  readonly text: string;
  /** Without the quotes. */
  readonly span: Span;
  /** Written without quotes on one line. */
  readonly plain: boolean;
}

export interface YamlList {
  readonly kind: "list";
  readonly items: readonly YamlNode[];
  readonly span: Span;
}

export interface YamlMap {
  readonly kind: "map";
  /** Each name once. */
  readonly entries: readonly YamlEntry[];
  readonly span: Span;
}

/** An empty value, or one that is reported and not read (an alias, too deep a nesting). */
export interface YamlNothing {
  readonly kind: "nothing";
  readonly span: Span;
  readonly reported: boolean;
}

export interface YamlEntry {
  readonly name: string;
  readonly nameSpan: Span;
  readonly value: YamlNode;
  /** Name written without quotes on one line. */
  readonly plain: boolean;
}

/** The text in quotes, so that YAML takes no character of it for punctuation. */
export function quoteYaml(text: string): string {
  return /["\\]/.test(text) ? `'${text.replaceAll("'", "''")}'` : `"${text}"`;
}
