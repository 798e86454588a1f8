/**
 * How long speaking and doing take.
 *
 * Words a minute: S. E. Lucas, The Art of Public Speaking (8th ed., 2004), p. 300, gives 125 to 150
 * for speakers of English. The lower end is the usual one here, since the listener works meanwhile.
 * Words of other languages are longer: their rates stand to it as those of reading aloud do in
 * Trauzettel-Klosinski and Dietz, Invest. Ophthalmol. Vis. Sci. 53 (2012) 5452, table 2 (English 228,
 * Spanish 218, Dutch 202, French 195, German 179 words a minute), rounded to five.
 */
import { wordCount } from "./speech.ts";

/** Rates that are taken: below they are a slip of the pen, above nobody follows. */
export const SLOWEST = 50;
export const FASTEST = 275;

/** Seconds of silence behind a step and behind a stage's title: common practice. */
export const PAUSE = 1;

/** Seconds of work at the bench where the author gives none: common practice, and no more than a guess. */
const A_STEP = 30;
const A_PART = 60;
const A_PART_MADE = 600;
const A_PIECE_OF_HARDWARE = 20;

/** Seconds that speaking the text takes; `rate` in words a minute. */
export function secondsToSpeak(text: string, rate: number): number {
  return (wordCount(text) * 60) / rate;
}

/** What a step puts in place, and what it makes. */
export interface Work {
  readonly fitted: number;
  readonly made: number;
  readonly hardware: number;
}

/** Seconds of work in a step. */
export function secondsToDo({ fitted, made, hardware }: Work): number {
  return A_STEP + fitted * A_PART + made * A_PART_MADE + hardware * A_PIECE_OF_HARDWARE;
}

/** `45 s`, `3 min 20 s`, `2 h 5 min`: as exact as such times can be. */
export function durationText(seconds: number): string {
  const whole = Math.round(seconds);
  if (whole < 60) return `${whole} s`;
  if (whole < 3600)
    return joined([
      [Math.floor(whole / 60), "min"],
      [whole % 60, "s"],
    ]);
  const minutes = Math.round(whole / 60);
  return joined([
    [Math.floor(minutes / 60), "h"],
    [minutes % 60, "min"],
  ]);
}

function joined(parts: readonly (readonly [number, string])[]): string {
  return parts
    .filter(([amount], index) => index === 0 || amount > 0)
    .map(([amount, unit]) => `${amount} ${unit}`)
    .join(" ");
}

/** `3:25`, `1:03:25` */
export function clockTime(seconds: number): string {
  const whole = Math.round(seconds);
  const two = (amount: number) => String(amount).padStart(2, "0");
  const [h, min, s] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  return h > 0 ? `${h}:${two(min)}:${two(s)}` : `${min}:${two(s)}`;
}
