/** A figure that is being written: what the cursor stands in. */

export type FigureWriting =
  /** Behind a number: its unit. */
  | { readonly kind: "unit"; readonly typed: string; readonly isApart: boolean }
  /** A name, a function or a designator. */
  | { readonly kind: "name"; readonly typed: string; readonly mayRead: boolean }
  /** An argument that is a word of a list. */
  | { readonly kind: "argument"; readonly typed: string; readonly call: Call };

/** The innermost call that is open at the cursor. */
export interface Call {
  readonly name: string;
  /** Zero-based position of the argument. */
  readonly index: number;
  /** The argument up to the cursor. */
  readonly typed: string;
}

const UNIT =
  /(?<![\p{L}\p{N}_])\d[\d.,]*(?:[eE][-+−]?\d+)?( ?)((?:[\p{L}µΩ°%][\p{L}µΩ°%·/²³]*)?)$/u;
const NAME = /[\p{L}_][\p{L}\p{N}_]*$/u;

/** `inside` is what follows the brace, up to the cursor. */
export function readFigureWriting(inside: string): FigureWriting {
  const unit = UNIT.exec(inside);
  if (unit && unit[0].trim() !== "") {
    return { kind: "unit", typed: unit[2]!, isApart: unit[1] !== "" };
  }
  const call = openCall(inside);
  if (call && /^[\p{L}\p{N}\s./+-]*$/u.test(call.typed)) {
    return { kind: "argument", typed: call.typed.trimStart(), call };
  }
  const typed = NAME.exec(inside)?.[0] ?? "";
  return { kind: "name", typed, mayRead: inside.trim() === typed };
}

/** The call whose brackets are open where the text ends. */
export function openCall(inside: string): Call | undefined {
  let depth = 0;
  let index = 0;
  let start = inside.length;
  for (let i = inside.length - 1; i >= 0; i--) {
    const sign = inside[i]!;
    if (sign === ")") depth++;
    else if (sign === "(" && depth > 0) depth--;
    else if (sign === "(") {
      const name = NAME.exec(inside.slice(0, i).trimEnd())?.[0];
      const typed = inside.slice(index === 0 ? i + 1 : start);
      return name === undefined ? undefined : { name, index, typed };
    } else if ((sign === ";" || sign === ",") && depth === 0) {
      // Commas part the subjects of a name; between digits they are decimal signs.
      if (sign === "," && /\d/.test(inside[i + 1] ?? "")) continue;
      if (index === 0) start = i + 1;
      index++;
    }
  }
  return undefined;
}
