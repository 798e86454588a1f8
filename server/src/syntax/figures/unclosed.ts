/** Tells an opening brace that was meant as a figure, though its closing brace is missing. */
import type { SyntaxProblem } from "../dialect.ts";
import type { MappedText } from "../marks/mappedText.ts";
import { MAX_FIGURE, shapeOf } from "./words.ts";

const NUMBER = String.raw`[-−+]?\d+(?:[.,]\d+)*`;
const UNIT = String.raw`(?:[pnuµμmckMGdh]?(?:[ΩVAWFHsgKN]|ohm|Hz|Wh|m|Nm|N·m|K\/W)|%|°C|in|mil|dB|kgf·cm|lbf·in)(?![\p{L}\d])`;
const VALUE = String.raw`${NUMBER}\s*(?:${UNIT})?`;
const NAME = String.raw`\p{L}[\p{L}\p{N}_]*(?:\([^()]*\))?`;
const TOLERANCE = String.raw`(?:\s*(?:±|\+\/?-|…|\.{2,3})\s*${VALUE})?`;
const FIGURE = new RegExp(
  String.raw`^\s*(?:(?:read\s+)?${NAME}\s*=\s*${VALUE}${TOLERANCE}|read\s+${NAME}\s*[<>]\s*${VALUE}|read\s+\p{L}+\([^()]*\))`,
  "u",
);

/** A problem for the beginning of a figure that is too long to be read; undefined for prose. */
export function longFigure(text: MappedText): SyntaxProblem | undefined {
  const figure = text.text.replaceAll(/[=±<>]/g, ";");
  if (shapeOf(figure) === "other") return undefined;
  return {
    span: { start: text.offsetAt(0) - 1, end: text.offsetAt(0) },
    about: "figure",
    message: `A figure longer than ${MAX_FIGURE} characters is not read. Give parts of it names of their own, and close it with }.`,
  };
}

/** A problem for `text`, which follows a `{` and runs to where no figure can go on. */
export function unclosedFigure(text: MappedText): SyntaxProblem | undefined {
  const match = FIGURE.exec(text.text);
  if (!match) return undefined;
  const end = match[0].trimEnd().length;
  const at = text.offsetAt(end);
  return {
    span: { start: text.offsetAt(0) - 1, end: at },
    about: "figure",
    message:
      "This looks like a figure, but its closing brace is missing or it holds a sign that no figure holds. " +
      "Close it with } after its last value.",
    suggestion: { title: "Write }", span: { start: at, end: at }, text: "}" },
  };
}
