/** The files of a guide: its pages and parts lists, and what is wrong with those that cannot be had. */
import { GuidePage } from "../model/guidePage.ts";
import type { BoardList } from "../model/kit.ts";
import { columnNames } from "../model/list/columnNames.ts";
import type { FrontMatter, Spanned } from "../syntax/frontMatter.ts";
import type { Span } from "../text/span.ts";
import { writtenPath } from "./movedPaths.ts";
import { folderOf, LISTS, lostFile, PAGES } from "./nearFiles.ts";
import { resolveReference, splitSheet } from "./paths.ts";
import { type NamedSheet, SheetFindings } from "./sheetFindings.ts";
import type { Sources, Wanted } from "./sources.ts";

/** Where files are looked for. */
export interface FileContext {
  readonly sources: Sources;
  readonly folders: readonly string[];
  readonly listsOutsideWorkspace: boolean;
}

/** Where a wanted file could not be had, and why. */
export interface FileProblem {
  readonly code: "unreadable-list" | "front-matter";
  readonly uri: string;
  readonly span: Span;
  readonly message: string;
  /** Texts that may be meant instead of the one at the span. */
  readonly meant: readonly string[];
}

/** The first page with its front matter as it was read; edits may have changed that since. */
export interface FirstPage {
  readonly page: GuidePage;
  readonly notes: FrontMatter;
}

export class GuideFiles {
  readonly #uri: string;
  #context: FileContext;
  /** Pages read so far, by URI; those no longer named are dropped after loading. */
  readonly #known = new Map<string, GuidePage>();
  pages: readonly GuidePage[] = [];
  /** URIs of all files, found or not. */
  uris = new Set<string>();
  /** Folders in which one that was not found has been looked for. */
  readonly #searched = new Set<string>();
  #named: ReadonlySet<string> = new Set();
  problems: FileProblem[] = [];
  sheets = new SheetFindings("", new Map());

  /** @param uri of the guide's first page */
  constructor(uri: string, context: FileContext) {
    this.#uri = uri;
    this.#context = context;
  }

  configure(context: FileContext): void {
    this.#context = context;
  }

  /** A page that has been read. */
  page(uri: string): GuidePage | undefined {
    return this.#known.get(uri);
  }

  /** Whether the guide has to be read again when the file comes, goes or changes. */
  dependsOn(uri: string): boolean {
    return this.uris.has(uri) || this.#searched.has(folderOf(uri));
  }

  /** Drops a page so that it is read again. */
  forget(uri: string): void {
    this.#known.delete(uri);
  }

  /** Reads the first page. Undefined when it is not there, or no guide's. */
  async loadFirst(): Promise<FirstPage | undefined> {
    this.problems = [];
    this.#searched.clear();
    this.uris = new Set([this.#uri]);
    const first = await this.#load(this.#uri);
    const page = first.kind === "found" ? first.value : undefined;
    const notes = page?.frontMatter;
    if (page && notes?.keys.has("parts")) {
      this.#named = this.#namedBy(notes);
      return { page, notes };
    }
    this.#usePages(page ? [page] : []);
    return undefined;
  }

  /** The guide's own page, and what its front matter names. */
  #namedBy({ parts, pages }: FrontMatter): ReadonlySet<string> {
    const paths = [
      ...parts.map(({ path }) => splitSheet(path.value).path),
      ...pages.map((page) => page.value),
    ];
    const reach = { folders: [], outsideAllowed: true };
    const resolved = paths.map((path) => resolveReference(this.#uri, path, reach));
    return new Set([this.#uri, ...resolved.flatMap((one) => ("uri" in one ? one.uri : []))]);
  }

  /** Reads the further pages that the first page names; gives all of them in their order. */
  async loadPages({ page: first, notes }: FirstPage): Promise<readonly GuidePage[]> {
    const pages = [first];
    for (const path of notes.pages) {
      const page = await this.#namedPage(path);
      if (page && !pages.includes(page)) pages.push(page);
    }
    return pages;
  }

  /** Reads the parts lists that the first page names. From then on the guide consists of the pages. */
  async loadLists(
    { notes }: FirstPage,
    pages: readonly GuidePage[],
  ): Promise<readonly BoardList[]> {
    const lists = await this.#loadLists(notes);
    this.#usePages(pages);
    return lists;
  }

  #usePages(pages: readonly GuidePage[]): void {
    this.pages = pages;
    for (const [uri, page] of this.#known) if (!pages.includes(page)) this.#known.delete(uri);
  }

  async #load(uri: string): Promise<Wanted<GuidePage>> {
    const known = this.#known.get(uri);
    if (known) return { kind: "found", value: known };
    const read = await this.#context.sources.page(uri);
    if (read.kind !== "found") return read;
    const page = new GuidePage(uri, read.value);
    this.#known.set(uri, page);
    return { kind: "found", value: page };
  }

  async #namedPage(path: Spanned<string>): Promise<GuidePage | undefined> {
    const uri = this.#resolve(path, "front-matter");
    if (uri === undefined) return undefined;
    this.uris.add(uri);
    const page = await this.#load(uri);
    if (page.kind === "found") return page.value;
    await this.#reportUnread(page, path, uri, "front-matter");
    return undefined;
  }

  async #loadLists(notes: FrontMatter): Promise<BoardList[]> {
    const columns = columnNames(notes);
    const lists: BoardList[] = [];
    const sheets = new Map<string, NamedSheet>();
    this.sheets = new SheetFindings(this.#uri, sheets);
    for (const { board, path } of notes.parts) {
      const { path: file, sheet } = splitSheet(path.value);
      const uri = this.#resolve({ ...path, value: file }, "unreadable-list");
      if (uri === undefined) continue;
      this.uris.add(uri);
      const wanted = await this.#context.sources.list(uri, columns, sheet);
      if (wanted.kind !== "found") {
        await this.#reportUnread(wanted, path, uri, "unreadable-list");
        continue;
      }
      const list = wanted.value;
      lists.push({ board, list });
      if (list.places) sheets.set(list.uri, { places: list.places, span: path.span });
      // A list that is no text cannot show its finding; the guide shows it.
      if (list.text !== "") continue;
      for (const { message } of list.problems) this.#report("unreadable-list", path, message);
    }
    return lists;
  }

  async #reportUnread(
    wanted: Exclude<Wanted<unknown>, { kind: "found" }>,
    path: Spanned<string>,
    uri: string,
    code: FileProblem["code"],
  ): Promise<void> {
    if (wanted.kind === "refused") return this.#report(code, path, wanted.message);
    for (const place of [uri, this.#uri]) this.#searched.add(folderOf(place));
    const { path: file, sheet } = splitSheet(path.value);
    const kind = code === "front-matter" ? PAGES : LISTS;
    const { files } = this.#context.sources;
    const lost = { reference: file, uri, kind, named: this.#named };
    const { message, meant } = await lostFile(lost, this.#uri, files);
    const isWorkbook = (name: string) => splitSheet(`${name}#1`).sheet !== undefined;
    const whole = meant.map((name) => (sheet && isWorkbook(name) ? `${name}#${sheet}` : name));
    this.#report(code, path, message, whole);
  }

  #resolve(path: Spanned<string>, code: FileProblem["code"]): string | undefined {
    const resolved = resolveReference(this.#uri, path.value, {
      folders: this.#context.folders,
      outsideAllowed: this.#context.listsOutsideWorkspace,
    });
    if ("uri" in resolved) return resolved.uri;
    const { problem, suggestion } = resolved;
    this.#report(code, path, problem, suggestion === undefined ? [] : [suggestion]);
    return undefined;
  }

  #report(
    code: FileProblem["code"],
    { span }: Spanned<string>,
    message: string,
    paths: readonly string[] = [],
  ): void {
    const sign = this.#known.get(this.#uri)?.text.slice(span.start - 1, span.start) ?? "";
    const meant = paths.map((path) => writtenPath(path, sign));
    this.problems.push({ code, uri: this.#uri, span, message, meant });
  }
}
