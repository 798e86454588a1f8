/** The one guide that the user names, checked; a UsageError where there is none, or several. */
import { UsageError } from "./arguments.ts";
import { type Checked, changedMeanwhile, checkGuide } from "./checking.ts";
import { diskFor, findInputs, type Input } from "./inputs.ts";

/** `name`: the guide's first page, or a folder that holds no other guide. */
export async function oneGuide(
  name: string,
  cwd: string,
  listsOutside: boolean,
): Promise<{ readonly input: Input; readonly checked: Checked }> {
  const { guides, problems } = await findInputs([name], cwd, () => {});
  if (problems.length > 0) throw new UsageError(problems.join("\n"));
  if (guides.length > 1) throw new UsageError(`There are several guides in \`${name}\`. Name one.`);
  const input = guides[0]!;
  const checked = await checkGuide(input, diskFor(input, listsOutside), listsOutside);
  if (!checked) throw new UsageError(changedMeanwhile(name));
  return { input, checked };
}
