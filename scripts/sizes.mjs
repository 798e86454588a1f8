// How large the minified bundles may be. What counts is what is loaded at the start: a bundle with
// all that it imports statically, but not what it imports on demand.

/** Largest sizes in kB. */
const LARGEST = {
  "dist/client.cjs": 450,
  "dist/client-web.js": 450,
  "dist/server.mjs": 700,
  "dist/worker.mjs": 700,
  "dist/kitquill.mjs": 50,
};

/** Bytes of a bundle with what it imports statically. */
function bytesAtStart(outputs, path, seen = new Set()) {
  if (seen.has(path)) return 0;
  seen.add(path);
  const { bytes, imports } = outputs[path];
  const parts = imports.filter((one) => one.kind === "import-statement" && !one.external);
  return parts.reduce((sum, part) => sum + bytesAtStart(outputs, part.path, seen), bytes);
}

const kilobytes = (bytes) => Math.round(bytes / 1000);

/**
 * One line for each bundle and each part that is loaded on demand.
 * @param outputs those of esbuild's metafiles
 */
export function sizeLines(outputs) {
  return Object.entries(outputs)
    .filter(([, { entryPoint }]) => entryPoint)
    .map(([path]) => `${path} ${kilobytes(bytesAtStart(outputs, path))} kB`);
}

/** What is larger than it may be. */
export function sizeFaults(outputs) {
  return Object.entries(LARGEST).flatMap(([path, largest]) => {
    const size = bytesAtStart(outputs, path) / 1000;
    return size > largest
      ? [`${path} has ${Math.ceil(size)} kB, at most ${largest} are wanted`]
      : [];
  });
}
