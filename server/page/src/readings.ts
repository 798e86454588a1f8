/** Fields for readings: each tells at once whether what was entered lies inside its limits. */
import { readDecimal } from "../../src/trade/matching/readings.ts";
import type { Store } from "./store.ts";
import type { Words } from "./words.ts";

export function followReadings(store: Store, words: Words): void {
  const fields = document.querySelectorAll<HTMLElement>("[data-reading]");
  const records = document.querySelectorAll<HTMLElement>("[data-record]");
  for (const [index, field] of fields.entries()) {
    const input = field.querySelector("input")!;
    const key = `${index} ${field.dataset.reading}`;
    const judge = () => {
      show(field, verdict(field, input.value), words);
      const unit = field.querySelector(".unit")!.textContent;
      // The test record lists the readings in the same order.
      const record = records[index];
      if (record) record.textContent = input.value && `${input.value} ${unit}`;
    };
    input.value = store.kept.fields[key] ?? "";
    if (input.value !== "") judge();
    input.addEventListener("input", () => {
      if (input.value === "") delete store.kept.fields[key];
      else store.kept.fields[key] = input.value;
      judge();
      store.save();
    });
  }
}

type Verdict = "inside" | "outside" | "noNumber";

function verdict({ dataset }: HTMLElement, text: string): Verdict | undefined {
  if (text.trim() === "") return undefined;
  const value = readDecimal(text);
  if (value === undefined) return "noNumber";
  const { low, high } = dataset;
  if (low === undefined && high === undefined) return undefined;
  const isInside = value >= Number(low ?? -Infinity) && value <= Number(high ?? Infinity);
  return isInside ? "inside" : "outside";
}

const SIGNS: Readonly<Record<Verdict, string>> = { inside: "✓ ", outside: "✗ ", noNumber: "? " };

function show(field: HTMLElement, verdict: Verdict | undefined, words: Words): void {
  const output = field.querySelector<HTMLElement>(".verdict")!;
  output.textContent = verdict ? SIGNS[verdict] + words[verdict] : "";
  field.dataset.verdict = verdict ?? "";
}
