/** Worksheets of matched sets: picks the sets that differ least as soon as all readings are there. */
import { bestSets } from "../../src/trade/matching/bestSets.ts";
import { readDecimal, wholeReadings } from "../../src/trade/matching/readings.ts";
import type { Store } from "./store.ts";
import { filled, type Words } from "./words.ts";

export function followWorksheets(store: Store, words: Words): void {
  for (const [sheet, element] of document.querySelectorAll<HTMLElement>(".worksheet").entries()) {
    const inputs = [...element.querySelectorAll("input")];
    const pick = () => {
      const output = element.querySelector<HTMLElement>(".picked")!;
      output.replaceChildren(...result(element, inputs, words));
    };
    for (const [index, input] of inputs.entries()) {
      const key = `sheet ${sheet} ${index}`;
      input.value = store.kept.fields[key] ?? "";
      input.addEventListener("input", () => {
        if (input.value === "") delete store.kept.fields[key];
        else store.kept.fields[key] = input.value;
        pick();
        store.save();
      });
    }
    if (inputs.some(({ value }) => value !== "")) pick();
  }
}

function result(
  { dataset }: HTMLElement,
  inputs: readonly HTMLInputElement[],
  words: Words,
): HTMLElement[] {
  const names: readonly (readonly string[])[] = JSON.parse(dataset.sets!);
  const size = Number(dataset.size);
  const read = inputs.flatMap(({ value }, index) =>
    readDecimal(value) === undefined ? [] : [{ value, index }],
  );
  const lacking = names.length * size - read.length;
  if (lacking > 0) return [line(filled(words.missing, lacking))];
  const { whole, inUnits } = wholeReadings(read.map(({ value }) => value));
  const best = bestSets(whole, names.length, size)!;
  const number = (place: number) => read[place]!.index + 1;
  const lines = best.sets.map((set, index) => {
    const parts = names[index]!.map((name, member) => `${name} = ${number(set[member]!)}`);
    const spread = filled(words.spread, inUnits(best.spreads[index]!));
    return line(`${filled(words.set, index + 1)}: ${parts.join(", ")} (${spread})`);
  });
  if (names.length > 1) lines.push(line(filled(words.total, inUnits(best.total))));
  if (best.left.length > 0) lines.push(line(filled(words.left, best.left.map(number).join(", "))));
  if (best.isTied) lines.push(line(words.tie));
  return [heading(words.result), ...lines];
}

function line(text: string): HTMLElement {
  const element = document.createElement("span");
  element.textContent = text;
  return element;
}

function heading(text: string): HTMLElement {
  const element = document.createElement("strong");
  element.textContent = text;
  return element;
}
