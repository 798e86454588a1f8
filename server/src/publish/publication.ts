/** All that can be published of a guide: the files of a publication, by what they are for. */
import { OUTPUTS, type OutputName } from "./outputs/all.ts";
import type { Output, PublishContext, PublishedFile } from "./outputs/output.ts";

export interface Publication {
  readonly files: readonly PublishedFile[];
  /** What is wrong with what the files say; where there is any, they are not for others' eyes. */
  readonly faults: readonly string[];
}

export function publish(context: PublishContext, names: readonly OutputName[]): Publication {
  const outputs = chosen(names);
  return {
    files: outputs.flatMap((output) => output.write(context)),
    faults: outputs.flatMap((output) => output.faults?.(context) ?? []),
  };
}

/** Whether one of the outputs shows pictures in that way. */
export function showsPictures(names: readonly OutputName[], how: Output["shows"]): boolean {
  return chosen(names).some(({ shows }) => shows === how);
}

/** Each once, in the order of the table. */
function chosen(names: readonly OutputName[]): readonly Output[] {
  return OUTPUTS.filter(({ name }) => names.includes(name));
}
