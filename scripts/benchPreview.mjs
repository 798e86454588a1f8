// Measures the preview through the real server: how soon it is there, and a key is in it.
import { performance } from "node:perf_hooks";

const KEYS = 100;

/**
 * `type` sends a letter typed in the middle of the guide, `rest` resolves when the server has caught
 * up with it. Gives the time until the preview is whole, and those until a key is in it, in ms, sorted.
 */
export async function measurePreview(connection, uri, type, rest) {
  let came = () => {};
  connection.onNotification("kitquill/preview/patch", (patch) => came(patch));
  /** Resolves with the time at which a patch comes that adds such a block. */
  const patchWith = (isWanted) =>
    new Promise((resolve) => {
      came = ({ splices }) => {
        const isHere = splices.some(({ add }) => add.some(({ html }) => isWanted(html)));
        if (isHere) resolve(performance.now());
      };
    });
  const start = performance.now();
  // The contents come once all stages are known.
  const whole = patchWith((html) => html.startsWith('<nav class="contents"'));
  await connection.sendRequest("kitquill/preview/show", { uri });
  const shown = (await whole) - start;
  const times = [];
  for (let key = 0; key < KEYS; key++) {
    await rest();
    const before = performance.now();
    const patched = patchWith((html) => html.startsWith('<div class="step"'));
    type();
    times.push((await patched) - before);
  }
  return { shown, times: times.sort((a, b) => a - b) };
}
