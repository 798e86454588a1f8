/** Long JSON in stretches, so that the text of a long guide is never held whole. */

/** So many entries of a list come in one stretch. */
const STRETCH = 200;

/** The object as `JSON.stringify(object, undefined, 2)` writes it, and a line end. */
export function* jsonText(object: object): Generator<string, void, void> {
  let before = "{";
  for (const [key, value] of Object.entries(object)) {
    if (value === undefined) continue;
    yield `${before}\n  ${JSON.stringify(key)}: `;
    if (Array.isArray(value) && value.length > STRETCH) yield* listText(value);
    else yield indented(JSON.stringify(value, undefined, 2));
    before = ",";
  }
  yield before === "{" ? "{}\n" : "\n}\n";
}

function* listText(list: readonly unknown[]): Generator<string, void, void> {
  for (let from = 0; from < list.length; from += STRETCH) {
    const text = indented(JSON.stringify(list.slice(from, from + STRETCH), undefined, 2));
    // Without the brackets that the stretch would have as a list of its own.
    yield `${from === 0 ? "[" : ","}${text.slice(1, text.lastIndexOf("\n"))}`;
  }
  yield "\n  ]";
}

/** One level deeper; no text within JSON has a line end in it. */
function indented(json: string): string {
  return json.replaceAll("\n", "\n  ");
}
