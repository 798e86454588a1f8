/** Findings that stand as long as what they speak of is the same object. */
import type { Finding } from "../check.ts";

/** Makes the finding of a subject once, so that what is shown of it can be kept. */
export class KeptFindings<Subject extends object> {
  readonly #known = new WeakMap<Subject, Finding>();

  of(subject: Subject, make: () => Finding): Finding {
    const known = this.#known.get(subject) ?? make();
    this.#known.set(subject, known);
    return known;
  }
}
