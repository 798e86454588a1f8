/** Half-open range of UTF-16 offsets in one text. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** The span `by` code units further on. */
export function shift(span: Span, by: number): Span {
  return { start: span.start + by, end: span.end + by };
}

/** Whether `offset` lies in the span or touches its end, as a cursor does. */
export function touches(span: Span, offset: number): boolean {
  return offset >= span.start && offset <= span.end;
}

/** Whether the character at the offset lies in the span. */
export function contains(span: Span, offset: number): boolean {
  return span.start <= offset && offset < span.end;
}

/** One replacement in a text; `span` refers to the text before any edit. */
export interface TextEdit {
  readonly span: Span;
  readonly text: string;
}

/** A replacement that is offered for something wrong. */
export interface Suggestion extends TextEdit {
  readonly title: string;
  /** It only writes down what was read anyway; others are guesses. */
  readonly safe?: true;
}

/**
 * The text after all edits.
 * Edits may come in any order but must not overlap; insertions at one place keep their order.
 */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  const sorted = edits
    .map((edit, index) => ({ edit, index }))
    .sort((a, b) => a.edit.span.start - b.edit.span.start || a.index - b.index);
  let out = "";
  let done = 0;
  for (const { edit } of sorted) {
    if (edit.span.start < done) throw new RangeError("edits overlap");
    out += text.slice(done, edit.span.start) + edit.text;
    done = edit.span.end;
  }
  return out + text.slice(done);
}
