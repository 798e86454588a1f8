/** `kitquill match`: picks matched sets from a lot of readings, for whoever picks for others. */
import { isProblem, type Lot, readReadings } from "../features/matching/readReadings.ts";
import { LineIndex } from "../text/lines.ts";
import { bestSets } from "../trade/matching/bestSets.ts";
import { wholeReadings } from "../trade/matching/readings.ts";
import { choice, onlyFile, readArguments, UsageError, wholeNumber } from "./arguments.ts";
import { formatMatches } from "./formats/matches.ts";
import { textOf } from "./namedFile.ts";
import type { ExitCode } from "./run.ts";
import type { Terminal } from "./terminal.ts";

const OPTIONS = {
  sets: "string",
  of: "string",
  column: "string",
  unit: "string",
  format: "string",
  help: "boolean",
} as const;

/** Readings times sets: what time and memory grow with. So many take about a second and 50 MB. */
const MOST = 50_000_000;

export async function match(
  argv: readonly string[],
  terminal: Terminal,
  cwd: string,
): Promise<ExitCode> {
  const args = readArguments(argv, OPTIONS);
  const name = onlyFile(args, "match", "a file of readings");
  const size = wholeNumber(args, "of") ?? 2;
  if (size < 2) throw new UsageError("`--of` is how many parts a set has: 2 or more.");
  const format = choice(args, "format", ["text", "csv", "json"]);
  const lot = await readLot(name, cwd, args.value("column"));
  const wanted = wholeNumber(args, "sets");
  if (wanted === 0) throw new UsageError("`--sets` is how many sets are picked: 1 or more.");
  const count = wanted ?? Math.floor(lot.readings.length / size);
  checkAmounts(name, lot.readings.length, count, size);
  const numbers = wholeReadings(lot.readings.map(({ figures }) => figures));
  const best = bestSets(numbers.whole, count, size)!;
  const unit = args.value("unit") ?? lot.unit;
  terminal.out(formatMatches({ ...lot, unit }, best, numbers, format, terminal.paint));
  return 0;
}

async function readLot(name: string, cwd: string, column: string | undefined): Promise<Lot> {
  const text = await textOf(name, cwd);
  const lot = readReadings(text, column);
  if (!isProblem(lot)) return lot;
  const { line, column: at } = new LineIndex(text).positionAt(lot.at);
  throw new UsageError(`${name}:${line + 1}:${at + 1} ${lot.message}`);
}

function checkAmounts(name: string, lot: number, count: number, size: number): void {
  if (count < 1 || lot < count * size) {
    const sets = Math.max(1, count);
    const wanted = `${sets === 1 ? "1 set" : `${sets} sets`} of ${size} ${sets === 1 ? "needs" : "need"} ${sets * size} readings`;
    throw new UsageError(`${wanted}; \`${name}\` has ${lot}.`);
  }
  if (lot * count > MOST) {
    throw new UsageError(
      `${lot} readings and ${count} sets are more than can be weighed at once (${MOST} readings × sets). Split the lot, by its readings.`,
    );
  }
}
