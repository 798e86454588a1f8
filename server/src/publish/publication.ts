/** All that can be published of a guide: the files of a publication, by what they are for. */
import { OUTPUTS, type OutputName } from "./outputs/all.ts";
import type { Output, Publication, PublishContext } from "./outputs/output.ts";

export function publish(context: PublishContext, names: readonly OutputName[]): Publication {
  const parts = chosen(names).map((output) => output.write(context));
  return {
    files: parts.flatMap(({ files }) => files),
    faults: parts.flatMap(({ faults }) => faults),
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
