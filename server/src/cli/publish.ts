/** `kitquill publish`: writes what builder and packer need, from a guide that the checks let pass. */
import { lstat, realpath } from "node:fs/promises";
import { basename, dirname, extname, join, resolve } from "node:path";
import { URI } from "vscode-uri";
import type { GuideState } from "../model/guideState.ts";
import { FASTEST, SLOWEST } from "../publish/narration/time.ts";
import { OUTPUT_NAMES, type OutputName } from "../publish/outputs/all.ts";
import type { PublishedFile } from "../publish/outputs/output.ts";
import { PACK_BY } from "../publish/packing/packingList.ts";
import { nearestWord } from "../text/nearest.ts";
import { publishGuide } from "../workspace/publishing.ts";
import { Sources } from "../workspace/sources.ts";
import { type Arguments, choice, readArguments, UsageError } from "./arguments.ts";
import { reportOf } from "./checking.ts";
import { formatText } from "./formats/text.ts";
import { diskFor } from "./inputs.ts";
import { oneGuide } from "./oneGuide.ts";
import { obstacles } from "./outputFolder.ts";
import { refusal } from "./refusal.ts";
import type { ExitCode } from "./run.ts";
import { shownPath } from "./shownPath.ts";
import type { Terminal } from "./terminal.ts";
import { writeFiles } from "./writeFiles.ts";

const OPTIONS = {
  out: "string",
  only: "string",
  pictures: "string",
  rate: "string",
  "pack-by": "string",
  force: "boolean",
  "lists-outside": "boolean",
  help: "boolean",
} as const;

export async function publish(
  argv: readonly string[],
  terminal: Terminal,
  cwd: string,
): Promise<ExitCode> {
  const args = readArguments(argv, OPTIONS);
  const [name, ...more] = args.positionals;
  if (name === undefined || more.length > 0) {
    throw new UsageError("`publish` needs the name of one guide.");
  }
  const outputs = outputsOf(args);
  const picturesBeside = choice(args, "pictures", ["inside", "beside"]) === "beside";
  const wordsPerMinute = rateOf(args);
  const packBy = args.has("pack-by") ? choice(args, "pack-by", PACK_BY) : undefined;
  const listsOutside = args.has("lists-outside");
  const { input, checked } = await oneGuide(name, cwd, listsOutside);
  const errors = checked.diagnoses.filter(({ severity }) => severity === "error");
  if (errors.length > 0 && !args.has("force")) {
    const report = reportOf(checked, cwd);
    const findings = report.findings.filter(({ severity }) => severity === "error");
    const told = { guides: [{ ...report, findings }], problems: [], fixed: undefined };
    terminal.out(formatText(told, terminal));
    terminal.err(
      "kitquill: nothing was published. Correct the errors, or publish with `--force`.\n",
    );
    return 1;
  }
  const { files, faults, warnings } = await publishGuide(
    checked.guide,
    {
      outputs,
      picturesBeside,
      wordsPerMinute,
      packBy,
      errors: errors.length,
      folders: [input.folder],
    },
    new Sources(diskFor(input, listsOutside)),
  );
  for (const fault of faults) terminal.err(`kitquill: ${fault}\n`);
  if (faults.length > 0 && !args.has("force")) {
    terminal.err("kitquill: nothing was published. Correct this, or publish with `--force`.\n");
    return 1;
  }
  if (files.length === 0) {
    const wanted = outputs.map((one) => `\`${one}\``).join(" and ");
    terminal.err(`kitquill: nothing was published: the guide has nothing for ${wanted}.\n`);
    return 0;
  }
  const folder = folderOf(args, input.uri, cwd);
  if (!args.has("out")) await refuseLink(folder, cwd);
  await spareSources(folder, files, checked.guide);
  const found = await obstacles(folder, files, args.has("force"));
  if (found.length > 0) {
    const orForce = args.has("force") ? "" : ", or replace it with `--force`";
    const advice = `Name another folder with \`--out\`${orForce}.`;
    throw new UsageError(`nothing was published.\n${found.join("\n")}\n${advice}`);
  }
  try {
    await writeFiles(folder, files);
  } catch (error) {
    const why = refusal(error);
    if (why === undefined) throw error;
    const shown = shownPath(URI.file(folder).toString(), cwd) || ".";
    throw new UsageError(
      `nothing was published: \`${shown}\` cannot be written to: ${why}. Name another folder with \`--out\`.`,
    );
  }
  for (const warning of warnings) terminal.err(`kitquill: ${warning}\n`);
  for (const file of files) {
    terminal.out(`${shownPath(URI.file(join(folder, file.name)).toString(), cwd)}\n`);
  }
  return 0;
}

/** The folder that we choose ourselves is not one that a link beside the guide leads away to. */
async function refuseLink(folder: string, cwd: string): Promise<void> {
  const stats = await lstat(folder).catch(() => undefined);
  if (!stats?.isSymbolicLink()) return;
  const shown = shownPath(URI.file(folder).toString(), cwd);
  throw new UsageError(
    `nothing was published: \`${shown}\` is a link that leads elsewhere. Name the folder with \`--out\`.`,
  );
}

/** What the guide is made from is never replaced, not even by force, nor by way of a link. */
async function spareSources(
  folder: string,
  files: readonly PublishedFile[],
  guide: GuideState,
): Promise<void> {
  const real = await realpath(folder).catch(() => folder);
  const written = new Set(files.map(({ name }) => resolve(real, name)));
  for (const { uri } of [...guide.pages, ...guide.lists]) {
    const { fsPath } = URI.parse(uri);
    const file = join(
      await realpath(dirname(fsPath)).catch(() => dirname(fsPath)),
      basename(fsPath),
    );
    if (!written.has(file)) continue;
    throw new UsageError(
      `nothing was published: \`${basename(fsPath)}\` is a source of the guide and would be replaced. Name another folder with \`--out\`.`,
    );
  }
}

/** Beside the guide, named after it, unless the user says where. */
function folderOf(args: Arguments, uri: string, cwd: string): string {
  const out = args.value("out");
  if (out !== undefined) return resolve(cwd, out);
  const { fsPath } = URI.parse(uri);
  return join(dirname(fsPath), `${basename(fsPath, extname(fsPath))}-published`);
}

/** Words a minute; undefined for the usual ones. */
function rateOf(args: Arguments): number | undefined {
  const given = args.value("rate");
  if (given === undefined) return undefined;
  const rate = Number(given);
  if (rate >= SLOWEST && rate <= FASTEST) return rate;
  throw new UsageError(
    `\`--rate\` takes from ${SLOWEST} to ${FASTEST} words a minute, not \`${given}\`.`,
  );
}

function outputsOf(args: Arguments): readonly OutputName[] {
  const only = args.value("only");
  if (only === undefined) return OUTPUT_NAMES;
  return only.split(",").map((text) => {
    const name = text.trim();
    const output = OUTPUT_NAMES.find((one) => one === name);
    if (output) return output;
    const meant = nearestWord(name, OUTPUT_NAMES);
    const hint = meant ? `Did you mean \`${meant}\`?` : `It takes ${OUTPUT_NAMES.join(", ")}.`;
    throw new UsageError(`\`--only\` does not take \`${name}\`. ${hint}`);
  });
}
