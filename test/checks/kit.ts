/** Short guides for tests: the front matter and the file separators are always the same. */
import { checkFixture, show } from "../fixture.ts";

/** A fixture of a guide with that body and that list; `more` goes into the front matter. */
export function kit(body: string, list: string, more = ""): string {
  const notes = `---\nparts: parts.csv\n${more}---\n\n`;
  return `--- file: guide.md\n${notes}${body.trim()}\n--- file: parts.csv\n${list.trim()}\n`;
}

/** Findings of one check, each as `severity: message`. */
export async function messages(fixture: string, code: string): Promise<string[]> {
  const { found } = await checkFixture(fixture, code);
  return found.map((one) => `${one.severity}: ${one.message}`);
}

/** What was found and what the fixture expects, as lines to compare. */
export async function drawn(fixture: string, code: string) {
  const { found, expected } = await checkFixture(fixture, code);
  return { found: show(found), expected: show(expected) };
}
