/** Reads the examples of a check's page: fenced blocks under `## Wrong` and `## Right`. */

export interface Example {
  readonly kind: "wrong" | "right";
  /** One-based line of the page where the example begins. */
  readonly line: number;
  /** The files as one fixture string. */
  readonly fixture: string;
}

/** The list of examples that show none of their own. */
const USUAL_LIST = `Designator,Quantity,Value,Package
"R1, R2",2,10k,R_Axial_DIN0207_L6.3mm_D2.5mm_P10.16mm
C1,1,100n,C_Disc_D5.0mm_W2.5mm_P5.00mm
Q1,1,BC547B,TO-92
`;

interface Block {
  readonly line: number;
  readonly language: string;
  /** File name after the language, for files beside guide and list. */
  readonly name: string;
  readonly text: string;
}

/**
 * An example begins with a block `markdown`; blocks that follow it add files to it: `csv` the list
 * `parts.csv`, any block with a name after the language (`csv relay.csv`) the file of that name.
 */
export function examplesOf(page: string): Example[] {
  const examples: Example[] = [];
  for (const kind of ["wrong", "right"] as const) {
    let files: Block[] = [];
    const finish = () => {
      if (files.length > 0) examples.push(exampleOf(kind, files));
      files = [];
    };
    for (const block of blocksUnder(page, kind === "wrong" ? "Wrong" : "Right")) {
      if (block.language === "markdown" && block.name === "") finish();
      files.push(block);
    }
    finish();
  }
  return examples;
}

function exampleOf(kind: Example["kind"], blocks: readonly Block[]): Example {
  const named = blocks.map((block) => ({ name: fileName(block), text: block.text }));
  if (!named.some((file) => file.name === "parts.csv")) {
    named.push({ name: "parts.csv", text: USUAL_LIST });
  }
  const fixture = named.map((file) => `--- file: ${file.name}\n${file.text}`).join("");
  return { kind, line: blocks[0]!.line, fixture };
}

function fileName(block: Block): string {
  if (block.name) return block.name;
  return block.language === "markdown" ? "guide.md" : "parts.csv";
}

function* blocksUnder(page: string, section: string): Generator<Block> {
  let within = "";
  let open: { fence: string; line: number; language: string; name: string } | undefined;
  let text = "";
  for (const [index, line] of page.split("\n").entries()) {
    if (open) {
      if (line === open.fence) {
        if (within === section) yield { ...open, text };
        open = undefined;
      } else {
        text += `${line}\n`;
      }
      continue;
    }
    const heading = /^## (.+)$/.exec(line);
    if (heading) within = heading[1]!;
    const fence = /^(`{3,})(\w+)(?: (\S+))?$/.exec(line);
    if (!fence) continue;
    open = { fence: fence[1]!, line: index + 1, language: fence[2]!, name: fence[3] ?? "" };
    text = "";
  }
}
