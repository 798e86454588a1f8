/** What `--help` says, by command. */
import { LANGUAGES } from "../text/language.ts";

const kitquill = `Kitquill checks the build guide of an electronic kit against its parts list.

Usage:
  kitquill check [FILE|DIR…]          check guides
  kitquill list steps GUIDE           the steps of a guide
  kitquill list figures GUIDE         the figures of a guide, with their values and limits
  kitquill list parts GUIDE|LIST      the parts of a guide or of a parts list
  kitquill list tools GUIDE           the tools and consumables, and the steps that need them
  kitquill list hazards GUIDE         what brings a hazard, and which note covers it
  kitquill list columns LIST          what each column of a parts list was taken for
  kitquill publish GUIDE              write what builder and packer need
  kitquill match READINGS             pick matched sets from a lot that was measured
  kitquill narration CUES GUIDE       hold the captions of a recording against its guide
  kitquill start LIST                 begin a guide from its parts list
  kitquill adopt GUIDE --parts LIST   mark the parts that a plain guide names
  kitquill compare OLD NEW            what changed between two parts lists, and what it touches
  kitquill explain [CODE]             what a finding means, and what to do
  kitquill lsp --stdio                serve an editor (Language Server Protocol)
  kitquill COMMAND --help             more about a command
  kitquill --version

A guide is a Markdown file whose front matter has the key \`parts\`.
`;

const check = `Checks guides against their parts lists.

Usage: kitquill check [FILE|DIR…] [options]

  FILE   a guide, by its first page
  DIR    every guide below it; what .gitignore leaves out is left out
         Without either, the folder you are in.

Options:
  --format FORMAT     text (default), json, sarif (2.1.0) or github (workflow commands)
  --max-warnings N    end with 1 when there are more than N warnings
  --fix               apply the fixes that change no meaning, then report the rest
  --lists-outside     also read parts lists outside the repository or folder
  --help

Ends with 0 when no error is found, 1 when one is (or too many warnings),
2 when the input or the arguments cannot be used.
`;

const list = `Lists what a guide or a parts list holds.

Usage:
  kitquill list steps GUIDE        number, stage, text, parts fitted, greatest height
  kitquill list figures GUIDE      each figure with its value, worst case and stated value
  kitquill list parts GUIDE        each part with its value, height and the step that fits it
  kitquill list parts LIST         each line of a parts list
  kitquill list tools GUIDE        tools, consumables and what else is not in the kit,
                                   what lists each, and the steps that need it
  kitquill list hazards GUIDE      what brings a hazard, in which step, and which note covers it
  kitquill list columns LIST       what each column was taken for, and why

Options:
  --format FORMAT     text (default), csv or json
  --lists-outside     also read parts lists outside the repository or folder
  --help
`;

const publish =
  async () => `Publishes a guide: what the builder, the packer and the shop need, all from one source.

Usage: kitquill publish GUIDE [options]

Options:
  --out DIR           the folder to write to; else one beside the guide, named after it
  --only LIST         some of the outputs below, by commas; else all of them
  --pictures WHERE    inside (default): in the page itself; beside: in a folder beside it
  --rate N            words a minute of the narration; else 125 in English, fewer in languages
                      of longer words
  --pack-by WHAT      bag, stage or kind: how the packing list groups; else by the list's bags
                      where it has any, or by stages
  --force             publish in spite of errors, and replace files that Kitquill did not make
  --lists-outside     also read parts lists outside the repository or folder
  --help

Outputs:
${await outputLines()}

Errors that \`kitquill check\` finds stop it. Ends with 0 when all was written, 1 when errors stopped
it, 2 when the input, the arguments or the folder cannot be used.
`;

const match = `Picks the sets that differ least in all from a lot of readings: the exact best, not a good guess.

Usage: kitquill match READINGS --sets K --of N [options]

  READINGS   a file of readings (CSV), one part a line, with a header or none; a column beside the
             readings may label the parts; decimal point or comma, one unit for all

Options:
  --sets K            how many sets; else as many as the readings suffice for
  --of N              parts of a set: 2 (default) for pairs, 3, 4 and so on
  --column COLUMN     header or number of the column with the readings, where there are several
  --unit UNIT         unit of the readings; else as header or readings have it
  --format FORMAT     text (default), csv (a row for each part) or json
  --help

The spread of a set is its greatest less its least reading; the sum of all spreads is as small as it
can be. Of choices with the same sum the one with the smallest greatest spread is taken, then the one
with the lower readings, and the output says that there was another.

Ends with 0 when the sets are picked, 2 when the readings or the arguments cannot be used.
`;

const narration = `Holds the captions of a recording against its guide as it is now: steps and hazard notes that are
not said, or in another order, and other designators or figures in them. Of captions that
\`kitquill publish\` has written, also what has other words now and what no step says any more.

Usage: kitquill narration CUES GUIDE [options]

  CUES   captions as WebVTT or SubRip (.srt), cut as you like, from a script or from a machine
         that listens

Options:
  --format FORMAT     text (default) or json
  --lists-outside     also read parts lists outside the repository or folder
  --help

Designators, amounts with their units and numbers are compared as they are spoken: "R one to R four"
is R1 to R4, "4k7" is 4.7 kilohms. Ends with 0 when the recording agrees with the guide, 1 when not, 2
when the input or the arguments cannot be used.
`;

const start = `Begins a guide from its parts list: every part in a step, lowest first, to be worded by you.

Usage:
  kitquill start LIST [options]                        one board, or a list with a board column
  kitquill start BOARD=LIST BOARD=LIST… [options]      a list for each board

Options:
  --out GUIDE         write this file, which must not exist yet; else the text is printed
  --title TITLE       the kit's name; else guessed from the names of file and folder
  --language LANG     en (default), ${LANGUAGES.slice(1).join(", ")}
  --help
`;

const adopt = `Marks the parts that a plain Markdown guide names in the steps that fit them.

Usage: kitquill adopt GUIDE [options]

It shows what it would mark, and which parts it leaves to you. Tests, fault
finding and the like are left alone.

Options:
  --parts LIST        the kit's parts list, where the guide does not name it yet
  --write             write the marks into the guide
  --lists-outside     also read parts lists outside the repository or folder
  --help
`;

const compare = `Tells what changed between two parts lists, by designator: order, grouping, spelling, delimiter and
kind of file make no change.

Usage:
  kitquill compare OLD NEW [options]            two files
  kitquill compare LIST --old-rev REV [options]  a list as it was in a revision of git, and as it is

  OLD, NEW   parts lists; a sheet of a workbook as \`kit.xlsx#Main board\`

Options:
  --guide GUIDE       also tell what the revision touches in the guide: steps to reword, sets,
                      order, clearance, figures, ratings, hazards, and what is packed
  --old-rev REV       take the old list from the user's git: HEAD~1, v1.2, a commit
  --format FORMAT     text (default), json, or markdown (a change note to send along; of the guide
                      it tells what builders with the old kit do otherwise)
  --lists-outside     also read parts lists outside the repository or folder
  --help

Ends with 0 when no part changed, 1 when one did, 2 when a list or the arguments cannot be used.
`;

const explain = `Tells what a finding means: what the check looks at, why it matters, wrong and right.

Usage:
  kitquill explain          every check with what it finds
  kitquill explain CODE     the page of the check whose code stands behind the finding

Options:
  --help
`;

const lsp = `Serves an editor over the Language Server Protocol.

Usage: kitquill lsp --stdio

Options:
  --stdio    talk over standard input and output
  --help
`;

/** A text, or where it takes more than the command line to know it, how it is made. */
const HELP = {
  kitquill,
  check,
  compare,
  list,
  match,
  publish,
  narration,
  start,
  adopt,
  explain,
  lsp,
} as const;

export type Topic = keyof typeof HELP;

/** The whole first, then the commands. */
export const TOPICS = Object.keys(HELP) as readonly Topic[];

export function isTopic(word: string): word is Topic {
  return Object.hasOwn(HELP, word);
}

export async function helpOn(topic: Topic): Promise<string> {
  const help = HELP[topic];
  return typeof help === "string" ? help : help();
}

async function outputLines(): Promise<string> {
  const { OUTPUTS } = await import("../publish/outputs/all.ts");
  return OUTPUTS.map(({ name, summary }) => `  ${name.padEnd(18)}  ${summary}`).join("\n");
}
