/** Reads a command's arguments; what cannot be used is told with the nearest that can. */
import { parseArgs } from "node:util";
import { nearestWord } from "../text/nearest.ts";

/** Arguments or input that cannot be used; the message is shown without a stack. */
export class UsageError extends Error {}

export type OptionTypes = Readonly<Record<string, "boolean" | "string">>;

export interface Arguments {
  readonly positionals: readonly string[];
  has(option: string): boolean;
  /** The value given last. */
  value(option: string): string | undefined;
}

/** Throws a UsageError for an option that is unknown or lacks its value. */
export function readArguments(args: readonly string[], options: OptionTypes): Arguments {
  const { tokens } = parseArgs({
    args: [...args],
    options: Object.fromEntries(Object.entries(options).map(([name, type]) => [name, { type }])),
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const positionals: string[] = [];
  const given = new Map<string, string | undefined>();
  for (const token of tokens) {
    if (token.kind === "positional") positionals.push(token.value);
    if (token.kind !== "option") continue;
    checkOption(token, options);
    given.set(token.name, token.value);
  }
  return {
    positionals,
    has: (option) => given.has(option),
    value: (option) => given.get(option),
  };
}

interface OptionToken {
  readonly name: string;
  readonly rawName: string;
  readonly value: string | undefined;
  readonly inlineValue: boolean | undefined;
}

function checkOption({ name, rawName, value, inlineValue }: OptionToken, options: OptionTypes) {
  const type = Object.hasOwn(options, name) ? options[name] : undefined;
  if (!type) {
    const names = Object.keys(options);
    const meant = nearestWord(name, names);
    const hint = meant ? `Did you mean \`--${meant}\`?` : "`--help` lists the options.";
    throw new UsageError(`\`${rawName}\` is not an option of this command. ${hint}`);
  }
  if (type === "boolean" && value !== undefined) {
    throw new UsageError(`\`${rawName}\` takes no value.`);
  }
  if (type === "string" && (value === undefined || (!inlineValue && value.startsWith("-")))) {
    throw new UsageError(`\`${rawName}\` needs a value after it.`);
  }
}

/** The option's value, held to the choices; the first of them when it is not given. */
export function choice<Choice extends string>(
  args: Arguments,
  option: string,
  choices: readonly [Choice, ...Choice[]],
): Choice {
  const value = args.value(option);
  if (value === undefined) return choices[0];
  if ((choices as readonly string[]).includes(value)) return value as Choice;
  const meant = nearestWord(value, choices);
  const hint = meant ? `Did you mean \`${meant}\`?` : `It takes ${choices.join(", ")}.`;
  throw new UsageError(`\`--${option}\` does not take \`${value}\`. ${hint}`);
}

/** The option's value as a whole number, undefined when it is not given. */
export function wholeNumber(args: Arguments, option: string): number | undefined {
  const value = args.value(option);
  if (value === undefined) return undefined;
  if (!/^\d{1,9}$/.test(value)) {
    throw new UsageError(`\`--${option}\` needs a whole number, not \`${value}\`.`);
  }
  return Number(value);
}

/** The one file that a command takes; `what` says which is lacking. */
export function onlyFile({ positionals }: Arguments, command: string, what: string): string {
  const [name, more] = positionals;
  if (name === undefined) throw new UsageError(`\`${command}\` needs ${what}.`);
  if (more !== undefined) {
    throw new UsageError(`\`${command}\` takes one file; \`${more}\` is too many.`);
  }
  return name;
}
