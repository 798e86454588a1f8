/**
 * Leaves rows and cells without content out of a worksheet's XML before it is parsed: a column that
 * someone has coloured to its end makes a million of them. What is left is read as before, since
 * nothing goes that a later row or cell without a name of its own would count on from.
 */

/** The end of a text that may be cut in the midst of a row waits for the rest; longer, it is no row. */
const LONGEST_ROW = 1 << 16;

const CELL = /<c [^<>]*\/>(?=<c [^<>]*?\br="|<\/row>)/g;
const ROW = /<row [^<>]*(?:\/>|><\/row>)(?=\s*(?:<row [^<>]*?\br="|<\/sheetData>))/g;

export function* withoutEmptyRows(text: Iterable<string>): Generator<string, void, void> {
  let waiting = "";
  for (const part of text) {
    const all = waiting + part;
    // The last row shows whether the one before it may go.
    const last = all.lastIndexOf("<row ");
    const end = last < 0 || all.length - last > LONGEST_ROW ? all.length : last;
    waiting = all.slice(end);
    yield stripped(all.slice(0, end), waiting);
  }
  yield stripped(waiting, "");
}

/** `next`: what follows, whose first tag the last row of the text is judged by. */
function stripped(text: string, next: string): string {
  const rows = text.replace(CELL, "");
  const tag = next.slice(0, next.indexOf(">") + 1);
  return (rows + tag).replace(ROW, "").slice(0, -tag.length || undefined);
}
