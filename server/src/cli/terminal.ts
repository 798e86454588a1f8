/** Where output goes: results to standard output, everything else to standard error. */

export type Colour = "red" | "yellow" | "blue" | "dim" | "bold";

export interface Terminal {
  out(text: string): void;
  err(text: string): void;
  /** The text in a colour, or as it is where output is no terminal. */
  paint(colour: Colour, text: string): string;
  /** Width of the output in columns; undefined where it is no terminal. */
  readonly columns: number | undefined;
  /** Shows the line in place of the last one while work goes on; nothing clears it. */
  progress(line: string | undefined): void;
}

/** Select Graphic Rendition codes of ECMA-48 8.3.117: on, off. */
const CODES: Readonly<Record<Colour, readonly [number, number]>> = {
  red: [31, 39],
  yellow: [33, 39],
  blue: [34, 39],
  dim: [2, 22],
  bold: [1, 22],
};

/** The terminal of this process. A reader that goes away ends the output, not with an error. */
export function processTerminal(): Terminal {
  const { stdout, stderr, env } = process;
  for (const stream of [stdout, stderr]) {
    stream.on("error", (error: NodeJS.ErrnoException) => {
      if (error.code !== "EPIPE") throw error;
      process.exit();
    });
  }
  const noColour = (env.NO_COLOR ?? "") !== "" || env.TERM === "dumb";
  const coloured = stdout.isTTY === true && !noColour;
  const live = stderr.isTTY === true && env.TERM !== "dumb";
  return {
    out: (text) => void stdout.write(text),
    err: (text) => void stderr.write(text),
    paint: (colour, text) => {
      const [on, off] = CODES[colour];
      return coloured ? `\u001b[${on}m${text}\u001b[${off}m` : text;
    },
    columns: stdout.isTTY ? stdout.columns : undefined,
    progress: (line) => {
      if (!live) return;
      const shown = (line ?? "").slice(0, (stderr.columns || 80) - 1);
      stderr.write(`\r\u001b[2K${shown}`);
    },
  };
}

/** The text with control characters replaced, so that no file can command the terminal. */
export function printable(text: string): string {
  return text.replace(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/g, "\uFFFD");
}
