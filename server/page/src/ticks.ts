/** The boxes of the steps and the bar that tells how far the builder has come. */
import type { Store } from "./store.ts";

export function followTicks(store: Store): void {
  const boxes = [...document.querySelectorAll<HTMLInputElement>("input[data-step]")];
  const bar = document.querySelector<HTMLElement>(".progress")!;
  const fill = bar.querySelector<HTMLElement>("i")!;
  let count = 0;
  for (const box of boxes) {
    box.checked = store.kept.done[box.dataset.step!] === true;
    if (box.checked) count++;
  }
  const show = () => {
    bar.setAttribute("aria-valuenow", String(count));
    fill.style.width = `${boxes.length > 0 ? (100 * count) / boxes.length : 0}%`;
  };
  show();
  document.addEventListener("change", ({ target }) => {
    const box = target as HTMLInputElement;
    const key = box.dataset.step;
    if (key === undefined) return;
    if (box.checked) store.kept.done[key] = true;
    else delete store.kept.done[key];
    count += box.checked ? 1 : -1;
    show();
    store.save();
  });
}
