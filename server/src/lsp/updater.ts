/**
 * Runs the analysis between messages. An edit that comes while work is under way is taken in at
 * the next pause; the work goes on with the newer text, and only what is current is published.
 */
import type { FileDiagnoses, Service } from "../service.ts";

export interface Host {
  /** Lets waiting messages in. */
  pause(): Promise<void>;
  /** Milliseconds on a clock that only runs forward. */
  now(): number;
}

/** Messages wait no longer than this (ms) for a slice of work. */
const SLICE = 8;

export class Updater {
  readonly #service: Service;
  readonly #host: Host;
  readonly #publish: (changes: readonly FileDiagnoses[]) => void;
  readonly #failed: (error: unknown) => void;
  #running: Promise<void> | undefined;

  constructor(
    service: Service,
    host: Host,
    publish: (changes: readonly FileDiagnoses[]) => void,
    failed: (error: unknown) => void,
  ) {
    this.#service = service;
    this.#host = host;
    this.#publish = publish;
    this.#failed = failed;
  }

  /** Sees to it that work which is due gets done; resolves when it is. */
  wake(): Promise<void> {
    this.#running ??= this.#run().finally(() => {
      this.#running = undefined;
    });
    return this.#running;
  }

  async #run(): Promise<void> {
    try {
      do {
        // Edits that came in one batch are worked through together.
        await this.#host.pause();
        let sliceEnd = this.#host.now() + SLICE;
        for await (const pause of this.#service.update()) {
          if (pause) this.#publish(this.#service.takeChanges());
          // What is published goes out with the pause.
          if (!pause && this.#host.now() < sliceEnd) continue;
          await this.#host.pause();
          sliceEnd = this.#host.now() + SLICE;
        }
        this.#publish(this.#service.takeChanges());
      } while (this.#service.isDirty);
    } catch (error) {
      this.#failed(error);
    }
  }
}
