/** What replacing a kit's parts list touches in its guide, as lines to compare. */
import type { RevisedGuide } from "../../server/src/features/revision/revision.ts";
import type { Touched } from "../../server/src/features/revision/touched.ts";
import { Service } from "../../server/src/service.ts";
import { MemoryFiles } from "../memoryFiles.ts";

export const FOLDER = "file:///kit/";

export type Texts = Readonly<Record<string, string>>;

/** The first text is the guide; `parts.csv` of the kit is the old list. */
export async function revise(kit: Texts, list: string, fresh: string): Promise<RevisedGuide> {
  const files = new MemoryFiles();
  for (const [name, text] of Object.entries(kit)) files.set(FOLDER + name, text);
  const service = new Service(files);
  service.follow(FOLDER + Object.keys(kit)[0]!);
  await service.settle();
  const [guide] = service.guides();
  const revised = await service.revise(
    guide!,
    FOLDER + list,
    { content: kit[list]! },
    { content: fresh },
  );
  if ("problem" in revised) throw new Error(revised.problem);
  return revised;
}

/** `step 1.2: message`, after its kind; the fixes behind it. */
export function told({ kind, step, message, fixes }: Touched): string {
  const where = step ? ` ${step.number}` : "";
  const titles = fixes().map(({ title }) => title);
  return `${kind}${where}: ${message}${titles.length > 0 ? ` [${titles.join("; ")}]` : ""}`;
}
