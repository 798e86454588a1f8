/**
 * Whether an editor can change a word in a file and leave every other byte as it is. Editors write
 * UTF-8 unless a byte-order mark says otherwise, and one kind of line end.
 */
import { decodeText } from "../text/decode.ts";
import { fileName } from "./paths.ts";

/** Why the bytes would not come back the same; undefined where they would. */
export function bytesProblem(bytes: Uint8Array): string | undefined {
  const decoded = decodeText(bytes);
  if (!("text" in decoded)) return `it is ${decoded.kind}`;
  const { text, encoding } = decoded;
  if (encoding === "windows-1252") {
    return "it is in an 8-bit encoding (Windows-1252), which an editor takes for UTF-8; save it as UTF-8 first";
  }
  const isMarked = bytes[0] === 0xff || bytes[0] === 0xfe;
  if (encoding !== "utf-8" && !isMarked) {
    return "it is in UTF-16 without a byte-order mark, which an editor does not recognise; save it as UTF-8 first";
  }
  return textProblem(text) ?? lineEndProblem(text);
}

/** Why the text that an editor holds is not what the file has. */
export function textProblem(text: string): string | undefined {
  return text.includes("\uFFFD")
    ? "it holds characters that could not be read; open it in its own encoding, or save it as UTF-8 first"
    : undefined;
}

/** The refusal of a change for such a problem. The reason stands near its beginning: an editor cuts the rest off. */
export function rewritingRefused(uri: string, problem: string): string {
  return `\`${fileName(uri)}\` cannot be changed: ${problem}. Other bytes of it would change, too.`;
}

/** Editors make all line ends of a file the same when they save it. */
function lineEndProblem(text: string): string | undefined {
  const kinds = new Set(text.match(/\r\n|\n|\r/g));
  if (kinds.size > 1) return "its line ends are of several kinds; make them the same first";
  return kinds.has("\r")
    ? "its lines end with a lone CR; save it with other line ends first"
    : undefined;
}
