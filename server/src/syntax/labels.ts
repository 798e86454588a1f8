/** Labels of link definitions and footnotes, in the form in which they are looked up. */

/** A label as CommonMark compares them: letter case and the kind of white space do not matter. */
export function labelKey(label: string): string {
  return label
    .replace(/[ \t\r\n]+/g, " ")
    .replace(/^ | $/g, "")
    .toLowerCase()
    .toUpperCase();
}

const sets = new WeakMap<readonly string[], ReadonlySet<string>>();

/** The labels for looking them up. The same list, used for many pieces, is made a set only once. */
export function labelSet(labels: readonly string[]): ReadonlySet<string> {
  const known = sets.get(labels) ?? new Set(labels);
  sets.set(labels, known);
  return known;
}
