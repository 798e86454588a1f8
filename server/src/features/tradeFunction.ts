/** A trade function in words and as it is called, for completion and while its call is written. */
import type { Parameter, TradeFunction } from "../trade/functions/function.ts";

/** Markdown: what it gives, where it holds, where it comes from, and an example. */
export function describeFunction({ summary, range, source, example }: TradeFunction): string {
  return `${summary}\n\n${range}\n\nSource: ${source}.\n\n\`{${example.written}}\``;
}

/** `coilInductance(turns; diameter; length)`, and where each parameter stands in it. */
export function callShape({ name, parameters }: TradeFunction): {
  readonly text: string;
  readonly parameters: readonly { readonly start: number; readonly end: number }[];
} {
  let text = `${name}(`;
  const places = parameters.map((parameter, index) => {
    if (index > 0) text += "; ";
    const start = text.length;
    text += shown(parameter);
    return { start, end: text.length };
  });
  return { text: `${text})`, parameters: places };
}

/** What a parameter takes, in a sentence. */
export function describeParameter({ meaning, unit, keys, default: standard }: Parameter): string {
  const words = [`${meaning.charAt(0).toUpperCase()}${meaning.slice(1)}`];
  if (unit !== "word" && unit !== "1") words.push(`in ${unit} or a unit like it`);
  if (keys) words.push(`one of ${keys.join(", ")}`);
  if (standard !== undefined) words.push(`${standard} if left out`);
  return `${words.join("; ")}.`;
}

function shown({ name, default: standard }: Parameter): string {
  return standard === undefined ? name : `${name} = ${standard}`;
}
