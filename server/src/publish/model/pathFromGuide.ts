/** File names in a publication: as seen from the guide's folder, so that no machine's paths get out. */

/** `pa-board.md`, `../lists/heron.csv`; the last part of the path where the files have no folder in common. */
export function pathFromGuide(from: string, to: string): string {
  const [here, there] = [decode(from).split("/"), decode(to).split("/")];
  const folders = here.slice(0, -1);
  let common = 0;
  while (common < folders.length && folders[common] === there[common]) common++;
  // `file:`, the authority and the root agree in any two files of one machine.
  if (common < 3) return there.at(-1)!;
  return [...folders.slice(common).map(() => ".."), ...there.slice(common)].join("/");
}

function decode(uri: string): string {
  try {
    return decodeURIComponent(uri);
  } catch {
    return uri;
  }
}
