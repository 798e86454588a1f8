/** Completion of the role words that may open a mark. */
import type { Role } from "../../syntax/dialect.ts";
import type { Completion } from "./completion.ts";

/** What each role says of its parts, for the author. */
const MEANINGS: readonly (readonly [role: Role, meaning: string])[] = [
  ["later", "Put aside on purpose: fitted in a later step, free of the height order here."],
  ["place", "Put in place and not soldered yet; a plain mark must follow."],
  ["insert", "Pushed into its socket, which must be fitted before."],
  ["empty", "The place on the board stays empty on purpose."],
  ["bridge", "A solder bridge or link that is closed; needs no line in the list."],
  ["make", "The builder makes this part: a coil, a link, a cable."],
  ["match", "Parts picked for likeness from those supplied: `Q1+Q2`."],
  ["try", "Placed for a trial only, and taken out again with `remove`."],
  ["remove", "Taken out again after a trial."],
  ["tool", "A tool that this step needs."],
  ["own", "Something the kit does not contain: paste, wire, a battery."],
  ["see", "Shown as the number of the step that carries the label."],
];

export function roleCompletions(typed: string): readonly Completion[] {
  const wanted = typed.toLowerCase();
  return MEANINGS.filter(([role]) => role.startsWith(wanted)).map(([role, meaning]) => ({
    label: `${role}:`,
    kind: "role",
    text: `${role}: `,
    leadsOn: true,
    documentation: () => meaning,
  }));
}
