/** The guide as checks and features see it: pages, stages, steps, and who uses which part. */

import type { Item, PartMark, Role } from "../syntax/dialect.ts";
import type {
  CommentFact,
  HeadingFact,
  NoteFact,
  PictureFact,
  PieceFacts,
  StepFact,
  TextFact,
} from "../syntax/facts.ts";
import type { FrontMatter } from "../syntax/frontMatter.ts";
import type { Language } from "../text/language.ts";
import type { Span } from "../text/span.ts";
import type { TextSource } from "../text/textSource.ts";
import type { ProductStandard } from "../trade/hazards/voltageLimits.ts";
import type { Figures } from "./figures/figure.ts";
import type { ListLine, PartsList } from "./list/partsList.ts";
import type { Hardware, Part, Supply } from "./parts.ts";
import type { TextBlock } from "./prose.ts";
import type { ThingIndex } from "./tools/thingIndex.ts";

/** A page of the guide: one Markdown file. */
export interface Page {
  readonly uri: string;
  readonly text: TextSource;
  readonly frontMatter: FrontMatter | undefined;
  /** What the page's link definitions give for their labels. */
  readonly addresses: ReadonlyMap<string, string>;
}

/** A piece of a page's text that is parsed alone; `start` moves when text before it changes. */
export interface GuidePiece {
  readonly page: Page;
  /** Offset in the page's text. */
  readonly start: number;
  readonly length: number;
  /** Position among all pieces of the guide. */
  readonly order: number;
  readonly facts: PieceFacts;
  readonly steps: readonly Step[];
  readonly marks: readonly ResolvedMark[];
  /** What its marks use; another array once one of them means something else. */
  readonly uses: readonly Use[];
  /** Its blocks of text in order, with words and sentences; read when asked for. */
  readonly prose: readonly TextBlock[];
}

/** A place that stays true while the text around it changes. */
export type Anchor =
  | { readonly piece: GuidePiece; readonly span: Span }
  | { readonly uri: string; readonly span: Span };

export interface Step {
  readonly piece: GuidePiece;
  readonly fact: StepFact;
  /** Position among the steps of its piece. */
  readonly index: number;
  readonly marks: readonly ResolvedMark[];
  readonly stage: Stage;
  /** `4.2`, sub-step `4.2.1`; follows edits, so read it late. */
  readonly number: string;
  /** The blocks of text that belong to it, those of its notes and pictures' captions included. */
  readonly prose: readonly TextBlock[];
}

export interface Stage {
  /** Counts stages with steps from 1. */
  readonly number: number;
  /** Undefined for steps before the first level-2 heading. */
  readonly heading: { readonly piece: GuidePiece; readonly fact: HeadingFact } | undefined;
  /** What `<!-- board … -->` at its head says. */
  readonly board: string | undefined;
  readonly steps: readonly Step[];
  /** Checker comments and hazard notes between the heading and the first step. */
  readonly head: readonly { readonly piece: GuidePiece; readonly fact: CommentFact | NoteFact }[];
  /** Whether a step of it takes a reading. */
  readonly hasReading: boolean;
  /** Its text, as far as it holds steps, notes, comments, readings or text outside the steps. */
  readonly stretches: readonly Stretch[];
  /** Its text outside the steps, and all its hazard notes, in order. */
  readonly remarks: readonly Remark[];
}

/** A piece, or a part of one; offsets count in the piece. */
export interface Stretch extends Span {
  readonly piece: GuidePiece;
}

/** Text of a stage that belongs to no step, or a hazard note. */
export interface Remark {
  readonly piece: GuidePiece;
  readonly fact: TextFact | NoteFact;
  /** How many steps of the stage begin before it. */
  readonly stepsBefore: number;
}

/** A mark with its items looked up in the parts list. */
export interface ResolvedMark {
  readonly piece: GuidePiece;
  readonly mark: PartMark;
  /** Undefined for tool, own, see and label marks outside any step. */
  readonly step: Step | undefined;
  readonly items: readonly ResolvedItem[];
}

export interface ResolvedItem {
  readonly item: Item;
  /** What the item means, in the order of its names or of the list. */
  readonly supplies: readonly Supply[];
  /** Names that no list knows, with the board they were looked for on. */
  readonly unknown: readonly {
    readonly name: string;
    readonly board: string;
    readonly span: Span;
  }[];
  /** A bare designator that several boards have; the first board was taken. */
  readonly doubtfulBoard: boolean;
  /** For an amount: hardware lines that fit the key equally well; one when it is clear. */
  readonly candidates: readonly Hardware[];
}

/** One part (or hardware line) taken up by one mark. */
export interface Use {
  readonly supply: Supply;
  readonly role: Role;
  readonly resolved: ResolvedMark;
  readonly item: Item;
  /** Where the part stands in the mark, relative to the piece; members of a range share it. */
  readonly span: Span;
  readonly step: Step;
  /** Pieces used; 1 for a part. Undefined for a length. */
  readonly count: number | undefined;
  readonly metres: number | undefined;
}

/** What the checks may ask. Answers are current at the time of asking. */
export interface Guide {
  readonly pages: readonly Page[];
  readonly frontMatter: FrontMatter;
  readonly lists: readonly PartsList[];
  readonly parts: readonly Part[];
  readonly hardware: readonly Hardware[];
  readonly boards: readonly string[];
  readonly stages: readonly Stage[];
  readonly settings: GuideSettings;
  readonly figures: Figures;
  /** Language of its words; undefined for one that has no word lists, where nothing is said of them. */
  readonly language: Language | undefined;
  /** Uses of a part or hardware line in document order. */
  uses(supply: Supply): readonly Use[];
  /** The part of that name; `board` only where the mark or stage names one. */
  find(name: string, board?: string): Part | undefined;
  /** Up to three listed designators nearest to the name, nearest first. */
  nearest(name: string, board?: string): readonly string[];
  /** Chip of a socket and socket of a chip, where the list tells. */
  socketOf(chip: Part): Part | undefined;
  chipOf(socket: Part): Part | undefined;
  /** Document order of two uses or steps: negative when `a` comes first. */
  compare(a: Use | Step, b: Use | Step): number;
  /** Steps and places of a label, in document order. */
  labels(name: string): readonly {
    readonly piece: GuidePiece;
    readonly span: Span;
    readonly step: Step | undefined;
  }[];
  /** Parts of a line of a list. */
  partsOf(line: ListLine): readonly Part[];
  /** All label names and all `see` references. */
  labelNames(): Iterable<string>;
  references(): Iterable<{
    readonly name: string;
    readonly piece: GuidePiece;
    readonly span: Span;
  }>;
  /** Parts that no mark accounts for (`isMissing`), in the order of the lists; kept current. */
  readonly missing: Iterable<Part>;
  /** Those of them that no finding explains; the same array as long as they are the same. */
  readonly unexplained: readonly Part[];
  /** Whether a finding other than `missing-part` already says what is wrong with the part. */
  explained(part: Part): boolean;
  /** All pictures, in no certain order. */
  pictures(): Iterable<{ readonly piece: GuidePiece; readonly fact: PictureFact }>;
  /** Whether a picture's file is known to be missing. */
  isMissingPicture(page: Page, address: string): boolean;
  /** Headings below which a piece holds nothing, with the next heading if that follows at once. */
  bareHeadings(): Iterable<BareHeading>;
  /** Tools and consumables that marks list and words name. */
  readonly things: ThingIndex;
  /** Whether the last stage already fits a part: the guide is past its first draft. */
  readonly reachesEnd: boolean;
}

export interface BareHeading {
  readonly piece: GuidePiece;
  readonly fact: HeadingFact;
  /** Undefined where text follows, or the guide ends. */
  readonly next: HeadingFact | undefined;
}

export interface GuideSettings {
  /** How much lower (mm) a part may be than one fitted before it. */
  readonly heightTolerance: number;
  /** Limits by check code, for checks that have one; the guide's own `checks` key wins over them. */
  readonly limits: Readonly<Record<string, number>>;
  /** The product standard whose limits say which voltages may be touched. */
  readonly productStandard: ProductStandard;
  /** Energy in J above which a charged capacitor is a hazard. */
  readonly storedEnergy: number;
  readonly derating: DeratingSettings;
}

/** Per cent of a part's rating above which a load is worth a warning. */
export interface DeratingSettings {
  readonly power: number;
  /** Also of current. */
  readonly voltage: number;
}
