/** The marks that spreadsheet programs leave beside a file for as long as they have it open. */
import { URI, Utils } from "vscode-uri";

/** Names of the marks of a file with this name. */
export function marksOf(name: string): readonly string[] {
  return [`~$${name}`, `.~lock.${name}#`];
}

/** The file whose mark this is, if it is one. */
export function markedFile(uri: string): string | undefined {
  const mark = URI.parse(uri);
  const [, name, other] = /^(?:~\$(.+)|\.~lock\.(.+)#)$/s.exec(Utils.basename(mark)) ?? [];
  const marked = name ?? other;
  return marked && Utils.joinPath(mark, "..", marked).toString();
}
