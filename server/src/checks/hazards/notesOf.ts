/** The hazard notes of a piece, read. */
import type { Guide, GuidePiece } from "../../model/guide.ts";
import { eventsOf } from "./events.ts";
import type { NoteReading } from "./note.ts";

/** In document order; none where the guide's language has no word lists. */
export function* notesOf(
  piece: GuidePiece,
  { language }: Guide,
): Generator<NoteReading, void, void> {
  if (!language) return;
  for (const event of eventsOf(piece, language)) if (event.kind === "note") yield event.note;
}
