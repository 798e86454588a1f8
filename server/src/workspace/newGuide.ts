/** Begins a guide from the file of its parts list. */
import { startGuide } from "../features/start/skeleton.ts";
import { LANGUAGES } from "../text/language.ts";
import { missingFile, relativePath } from "./paths.ts";
import type { Sources } from "./sources.ts";

export interface NewGuideRequest {
  /** URI of the parts list. */
  readonly list: string;
  /** URI of the file that the guide is for; paths in it count from its folder. */
  readonly guide: string;
  readonly title: string;
  /** Two letters; English where its words are not known. */
  readonly language: string;
}

export type NewGuide = { readonly text: string } | { readonly problem: string };

/** The text of the guide, or why there is none. */
export async function newGuide(request: NewGuideRequest, sources: Sources): Promise<NewGuide> {
  const path = relativePath(request.guide, request.list) ?? request.list;
  const wanted = await sources.list(request.list, {});
  if (wanted.kind === "missing") return { problem: missingFile(path) };
  if (wanted.kind === "refused") return { problem: wanted.message };
  const list = wanted.value;
  if (list.lines.length === 0) {
    const why =
      list.problems[0]?.message ??
      "The parts list holds no parts. Write a line for each kind of part.";
    return { problem: why };
  }
  const language = LANGUAGES.find((one) => one === request.language) ?? "en";
  const { title } = request;
  return { text: startGuide({ title, language, lists: [{ board: undefined, list, path }] }) };
}
