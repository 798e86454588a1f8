/** Captions of a recording held against a guide that has changed since, or was spoken freely. */
import { describe, expect, test } from "vitest";
import { align } from "../../server/src/publish/narration/recording/align.ts";
import { compareRecording } from "../../server/src/publish/narration/recording/compare.ts";
import { readCues } from "../../server/src/publish/narration/recording/readCues.ts";
import { spokenTokens } from "../../server/src/publish/narration/recording/spokenTokens.ts";
import { scriptOf } from "../../server/src/publish/narration/script.ts";
import { captions } from "../../server/src/publish/narration/webvtt.ts";
import { narrationWords } from "../../server/src/publish/narration/words/words.ts";
import { fixture } from "../fixture.ts";
import { publishFiles, publishSample } from "./published.ts";

const LIST = `--- file: parts.csv
Designator,Quantity,Value,Footprint
"R1-R9",9,4k7,R_Axial_DIN0207_L6.3mm_D2.5mm
"C1-C4",4,100n,C_Disc_D5.0mm_W2.5mm_P5.00mm
U1,1,LM358,DIP-8
`;

const GUIDE = `## Board

> **NOTICE: static discharge.** A spark kills U1. Wear a wrist strap.

1. Solder the resistors [R1–R4] flush to the board and cut their leads.
2. Push the ceramic capacitors [C1, C2] down until their feet stand on the board.
3. Turn the chip [U1] with its notch towards the edge and press it in.
4. Tighten the screws of the heat sink to {0.55 N·m} with a torque driver.
5. Measure the supply of the chip with the black lead on ground: {read V(U1) = 12 V ± 5 %}.
`;

async function guideOf(body: string) {
  const text = `---\ntitle: Wren\nparts: parts.csv\n---\n${body}\n${LIST}`;
  return (await publishFiles(fixture(text).files, "guide.md", ["narration"])).guide;
}

/** Differences between the cues and the guide: kind, place and message. */
async function compared(vtt: string, body: string): Promise<string[]> {
  const guide = await guideOf(body);
  const found = compareRecording(scriptOf(guide, undefined), guide, readCues(vtt)!);
  return found.map(({ kind, place, message }) => [kind, place, message].filter(Boolean).join(": "));
}

/** The captions that were published of an older edition. */
async function published(body: string): Promise<string> {
  return captions(scriptOf(await guideOf(body), undefined));
}

/** Captions of a machine that listens: small pieces, no signs, two seconds each. */
function heard(text: string): string {
  const words = text.trim().split(/\s+/);
  const cues: string[] = [];
  for (let at = 0; at < words.length; at += 7) {
    const time = (words: number) => `00:${String(words % 60).padStart(2, "0")}.000`;
    const from = cues.length * 2;
    cues.push(`${time(from)} --> ${time(from + 2)}\n${words.slice(at, at + 7).join(" ")}`);
  }
  return `WEBVTT\n\n${cues.join("\n\n")}\n`;
}

describe("captions published of an older edition", () => {
  test("agree with the guide that they are of", async () => {
    expect(await compared(await published(GUIDE), GUIDE)).toEqual([]);
  });

  test.each([
    [
      "another word",
      "cut their leads",
      "clip their leads",
      ["reworded: step 1.1: has other words now."],
    ],
    ["a designator", "[C1, C2]", "[C1, C3]", ["parts: step 1.2: has C3; the recording says C2."]],
    ["a figure", "0.55 N·m", "0.6 N·m", ["figures: step 1.4: has 0.6; the recording says 0.55."]],
    [
      "a step that is new",
      "\n2. Push",
      "\n2. Bridge the pads beside the regulator with a drop of solder.\n3. Push",
      ["missing: step 1.2: is not said."],
    ],
    [
      "a step that is gone",
      "3. Turn the chip [U1] with its notch towards the edge and press it in.\n",
      "",
      [
        'gone: No step says this any more: "Turn the chip U1 with its notch towards the edge and press it in."',
      ],
    ],
    [
      "a caution that is new",
      "\n\n1. Solder",
      "\n\n> **CAUTION: hot surface.** Fresh joints burn fingers. Let them cool down first.\n\n1. Solder",
      ["missing: a hazard note of stage 1: is not said."],
    ],
  ])("tell %s", async (_, before, after, expected) => {
    expect(GUIDE).toContain(before);
    expect(await compared(await published(GUIDE), GUIDE.replace(before, after))).toEqual(expected);
  });

  test("tell a step that was moved", async () => {
    const lines = GUIDE.split("\n");
    const at = lines.findIndex((line) => line.startsWith("2."));
    const [moved] = lines.splice(at, 1);
    lines.splice(at + 2, 0, moved!);
    expect(await compared(await published(GUIDE), lines.join("\n"))).toEqual([
      expect.stringMatching(/^order: step 1\.\d: is said in another order: after /),
    ]);
  });
});

describe("captions of a machine that listened to somebody speaking freely", () => {
  const SPEECH = `hello and welcome to the board in this part a spark kills U1 so wear a wrist strap against
    static discharge okay now solder the resistors R one to R four flush to the board and cut their leads
    next push the ceramic capacitors C1 and C2 down until their feet stand on the board then turn the chip
    u1 with its notch towards the edge and press it in now tighten the screws of the heat sink to 0.55
    newton metres with a torque driver and at last measure the supply of the chip with the black lead on
    ground it should be twelve volts plus or minus five percent well done`;

  test("agree with the guide although other words were said", async () => {
    expect(await compared(heard(SPEECH), GUIDE)).toEqual([]);
  });

  test("tell what was said otherwise and what was left out", async () => {
    const slips = SPEECH.replace("R one to R four", "R one to R five")
      .replace("0.55", "0.45")
      .replace(/then turn the chip[\s\S]*?press it in/, "");
    expect(await compared(heard(slips), GUIDE)).toEqual([
      "parts: step 1.1: does not have R5, which the recording says.",
      "missing: step 1.3: is not said.",
      "figures: step 1.4: has 0.55; the recording says 0.45.",
    ]);
  });

  test("tell a step that was said in another order", async () => {
    const swapped = SPEECH.replace(/next push[\s\S]*?stand on the board/, "").replace(
      "well done",
      "oh and push the ceramic capacitors C1 and C2 down until their feet stand on the board",
    );
    expect(await compared(heard(swapped), GUIDE)).toEqual([
      "order: step 1.2: is said in another order: after step 1.5.",
    ]);
  });

  test("of another kit have none of the steps", async () => {
    const other =
      "today we paint a wooden bird house in green and let it dry in the sun for a week";
    const found = await compared(heard(other), GUIDE);
    expect(found.filter((one) => one.startsWith("missing: step"))).toHaveLength(5);
  });
});

test("a sample's own captions agree with it, and tell a changed designator in place", async () => {
  const { guide, text } = await publishSample("heron", "heron.md", ["narration"]);
  const script = scriptOf(guide, undefined);
  const vtt = text("narration.vtt");
  expect(compareRecording(script, guide, readCues(vtt)!)).toEqual([]);
  const slip = vtt.replace(/\nD1, 1N5819\./, "\nD2, 1N5819.");
  expect(slip).not.toBe(vtt);
  const [only, ...more] = compareRecording(script, guide, readCues(slip)!);
  expect(more).toEqual([]);
  expect(only).toMatchObject({ kind: "parts", message: "has D1; the recording says D2." });
});

describe("what is said compares alike", () => {
  const keys = (text: string, language: "en" | "de" = "en") => {
    const speech = { words: narrationWords(language), letters: new Set(["R", "C", "LED"]) };
    return spokenTokens(text, speech).map(({ key }) => key);
  };
  test.each([
    ["R one to R four", "R1 to R4"],
    ["r1", "R1"],
    ["LED 2", "LED2"],
    ["six screws", "6 screws"],
  ])("%s and %s", (one, other) => {
    expect(keys(one)).toEqual(keys(other));
  });

  // Amounts: IEC 60062 for the codes, the SI's prefixes for the rest.
  test.each([
    ["4k7", "4.7 kilohms", "#4700"],
    ["100 nF", "0.1 µF", "#1e-7"],
    ["100n", "100 nanofarads", "#1e-7"],
    ["10 000 hertz", "10 kHz", "#10000"],
    ["twelve volts", "12 V", "#12"],
  ])("the amounts of %s and %s", (one, other, amount) => {
    expect([keys(one)[0], keys(other)[0]]).toEqual([amount, amount]);
  });

  test("in the guide's language", () => {
    expect(keys("R eins bis R vier", "de")).toEqual(keys("R1 bis R4", "de"));
    expect(keys("4,7 Kiloohm", "de")[0]).toBe(keys("4k7", "de")[0]);
  });
});

describe("reading cues", () => {
  test("with identifiers, settings, tags, notes and styles", () => {
    const vtt =
      "\uFEFFWEBVTT - title\r\nX: y\r\n\r\nSTYLE\r\n::cue { color: red }\r\n\r\nNOTE a --> b\r\n\r\nid\r\n01:02.500 --> 01:04.000 line:0\r\n<v Ann>Fit <b>R1</b>\r\nnow &amp; here\r\n\r\n1:00:00.000 --> 1:00:01.000\r\nx\r\n";
    expect(readCues(vtt)!.cues).toEqual([
      { start: 62.5, text: "Fit R1 now & here" },
      { start: 3600, text: "x" },
    ]);
  });
  test("of SubRip, as WebVTT has them", () => {
    const vtt =
      "WEBVTT\n\n1\n00:01:02.500 --> 00:01:04.000\n<i>Fit R1</i>\nnow\n\n2\n01:00:00.000 --> 01:00:01.000\nx\n";
    const subRip = `\uFEFF${vtt.slice("WEBVTT\n\n".length).replace(/(:\d\d)\./g, "$1,")}`;
    expect(readCues(subRip.replaceAll("\n", "\r\n"))).toEqual(readCues(vtt));
    expect(readCues(subRip)!.cues.map(({ start }) => start)).toEqual([62.5, 3600]);
  });
  test("no other file", () => {
    expect(readCues("1\nx\n")).toBeUndefined();
    expect(readCues("")).toBeUndefined();
  });
});

describe("pairing rows", () => {
  test("keeps the order and pairs all that is alike in two like rows", () => {
    const row = [..."the quick brown fox jumps over the lazy dog"];
    expect([...align(row, row)]).toEqual(row.map((_, index) => index));
    expect([...align([..."abcxdef"], [..."abcdyef"])]).toEqual([0, 1, 2, -1, 3, 5, 6]);
  });
  test("takes a long recording of other words without trouble", () => {
    const a = Array.from({ length: 40_000 }, (_, index) => `a${index % 50}`);
    const b = Array.from({ length: 40_000 }, (_, index) => `b${index % 50}`);
    expect(align(a, b).every((place) => place === -1)).toBe(true);
  });
});
