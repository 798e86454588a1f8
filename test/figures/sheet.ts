/** Guides with figures, followed as a server does, and what their sheet says. */
import type { GuideFigure } from "../../server/src/model/figures/figure.ts";
import type { GuideState } from "../../server/src/model/guideState.ts";
import { printLimits, printValue } from "../../server/src/quantity/printRange.ts";
import { Service } from "../../server/src/service.ts";
import { MemoryFiles } from "../memoryFiles.ts";

const GUIDE = "file:///kit/guide.md";

const LIST = `Designator,Quantity,Value,Tolerance,Board
"R1,R2",2,10k,1 %,main
R1,1,470R,5 %,relay
R3,1,4k7,,main
C1,1,100u,+80/-20 %,main
C2,1,4p7,0.25 pF,main
L1,1,2.5uH,10 %,main
Q1,1,BC547,,main
`;

export class Followed {
  readonly service: Service;
  #text: string;
  #version = 0;

  private constructor(service: Service, text: string) {
    this.service = service;
    this.#text = text;
  }

  /** A guide of that body; `head` goes into the front matter. */
  static async open(body: string, head = "", list = LIST): Promise<Followed> {
    const files = new MemoryFiles();
    files.set("file:///kit/parts.csv", list);
    const text = `---\nparts: parts.csv\n${head}---\n\n${body}\n`;
    const one = new Followed(new Service(files), text);
    one.service.open(GUIDE, 0, text);
    await one.service.settle();
    return one;
  }

  get guide(): GuideState {
    return this.service.guidesOf(GUIDE)[0]!;
  }

  /** Puts `by` for the first `what`. */
  async replace(what: string, by: string): Promise<void> {
    const start = this.#text.indexOf(what);
    if (start < 0) throw new Error(`no ${what}`);
    const span = { start, end: start + what.length };
    this.#text = this.#text.slice(0, start) + by + this.#text.slice(span.end);
    this.service.edit(GUIDE, ++this.#version, [{ span, text: by }]);
    await this.service.settle();
  }

  /** The figures as `name: value [limits] role`. */
  figures(): string[] {
    return this.guide.figures.all().map(show);
  }

  value(symbol: string, ...subjects: string[]): string | undefined {
    const parts = subjects.map((name) => this.guide.find(name) ?? name);
    const figure = this.guide.figures.named(symbol, ...parts);
    return figure?.evaluation?.value && plain(printLimits(figure.evaluation.value));
  }
}

function show(figure: GuideFigure): string {
  const { name } = figure.figure;
  const { value, problem } = figure.evaluation ?? {};
  const shown = value ? `${printValue(value)} [${printLimits(value)}]` : `! ${problem?.kind}`;
  return plain(`${name?.text ?? "-"}: ${shown} ${figure.role}`);
}

function plain(text: string): string {
  return text.replaceAll("\u00a0", " ");
}
