/** The one door to the analysis for the language server and the command line. */
import type { Fix, Severity } from "./checks/check.ts";
import type { Guide } from "./model/guide.ts";
import type { PartsList } from "./model/list/partsList.ts";
import type { Position } from "./text/lines.ts";
import type { Span } from "./text/span.ts";

export interface Location {
  readonly uri: string;
  readonly span: Span;
  readonly start: Position;
  readonly end: Position;
}

/** A finding as it leaves the analysis: its message made, its place counted. */
export interface Diagnosis extends Location {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly related: readonly (Location & { readonly message: string })[];
  readonly fixable: boolean;
  /** The fixes as the text stands now. */
  fixes(): readonly Fix[];
}

export interface ServiceSettings {
  readonly heightTolerance: number;
  /** Severity by check code; the guide's own `checks` key wins over it. */
  readonly checks: Readonly<Record<string, Severity | "off">>;
  /** Folders whose files may be read; a list elsewhere is refused. Empty: the guide's own folder. */
  readonly folders: readonly string[];
  readonly listsOutsideWorkspace: boolean;
}

export interface FileDiagnoses {
  readonly uri: string;
  /** Version of the open text that was checked; undefined for a file that is not open. */
  readonly version: number | undefined;
  readonly diagnoses: readonly Diagnosis[];
}

export interface Service {
  /** The editor's text wins over the file. */
  open(uri: string, version: number, text: string): void;
  edit(uri: string, version: number, edits: readonly { span: Span; text: string }[]): void;
  close(uri: string): void;
  /** A file was made, changed or deleted outside the editor. */
  changedOutside(uri: string): void;
  configure(settings: ServiceSettings): void;
  /** Follows a guide that no editor has open (command line). */
  follow(uri: string): void;
  /**
   * Does the work that is due, in slices of a few milliseconds; the caller decides between slices
   * whether to go on. Waits for files where it needs them. Done when everything is up to date.
   */
  update(): AsyncGenerator<void, void, void>;
  /** Files whose diagnoses changed since the last call. A file no longer followed comes once, empty. */
  takeChanges(): FileDiagnoses[];
  /** Guides whose pages or parts lists include the file. */
  guidesOf(uri: string): readonly Guide[];
  /** URIs of the parts lists in use. */
  lists(): readonly string[];
  list(uri: string): PartsList | undefined;
  /** Current text of a page or list. */
  text(uri: string): string | undefined;
}
