/** What completion offers at the cursor of a kit, and what the line is after a choice. */
import { completeInGuide } from "../../server/src/features/completion/complete.ts";
import { type AtCursor, atCursor, edited } from "./cursor.ts";

export type Offered = Awaited<ReturnType<typeof offered>>;

export async function offered(kit: string) {
  const at: AtCursor = await atCursor(kit);
  const found = completeInGuide(at.guide, at.uri, at.offset);
  return { at, found, labels: found?.items.map(({ label }) => label) ?? [] };
}

/** The line of the cursor after choosing the label. */
export function chosen({ at, found }: Offered, label: string): string {
  const item = found!.items.find((one) => one.label === label)!;
  const text = edited(at, [{ span: found!.span, text: item.text ?? item.label }]);
  const start = text.lastIndexOf("\n", found!.span.start - 1) + 1;
  return text.slice(start).split("\n", 1)[0]!;
}
