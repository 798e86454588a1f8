/** A real Neovim without a screen, driven through its own socket: keys go in, answers come out. */
import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { dirname, join } from "node:path";

const PATIENCE_MS = 20_000;
/** A Neovim that waits for a key answers nothing. */
const ANSWER_MS = 2_000;

/** Whether this machine has a Neovim. */
export function hasNeovim(): boolean {
  return spawnSync("nvim", ["--version"]).status === 0;
}

export class Neovim {
  readonly #process: ChildProcess;
  readonly #socket: string;
  #said = "";

  /** Starts in `folder` with a configuration file and nothing else of the user's. */
  constructor(folder: string, init: string, env: NodeJS.ProcessEnv) {
    this.#socket = join(dirname(init), "nvim.sock");
    const args = ["--headless", "-n", "-i", "NONE", "-u", init, "--listen", this.#socket];
    this.#process = spawn("nvim", args, { cwd: folder, env });
    for (const stream of [this.#process.stdout!, this.#process.stderr!]) {
      stream.setEncoding("utf8").on("data", (text) => {
        this.#said += text;
      });
    }
  }

  /** Waits until it answers. */
  ready(): Promise<unknown> {
    return this.eventually("1", (answer) => answer === 1);
  }

  /** Presses keys, in Neovim's notation: `<Esc>`, `<C-x>`. */
  press(keys: string): void {
    const { status, stderr } = this.#remote("--remote-send", keys);
    if (status !== 0) throw new Error(`Neovim took no keys: ${stderr}${this.#said}`);
  }

  /** The value of a Lua expression. */
  ask(lua: string): unknown {
    const expression = `json_encode(luaeval(${quoted(lua)}))`;
    const { status, stdout, stderr } = this.#remote("--remote-expr", expression);
    if (status !== 0) throw new Error(`${lua}: ${stderr}${this.#said}`);
    // Older ones print the answer where errors go.
    return JSON.parse(stdout || stderr);
  }

  /** Asks until the answer is right; throws with the last one otherwise. */
  async eventually<T = unknown>(lua: string, right: (answer: T) => boolean): Promise<T> {
    const until = Date.now() + PATIENCE_MS;
    for (;;) {
      let last: unknown;
      try {
        const answer = this.ask(lua) as T;
        if (right(answer)) return answer;
        last = answer;
      } catch (error) {
        last = error;
      }
      if (this.#process.exitCode !== null) throw new Error(`Neovim has ended: ${this.#said}`);
      if (Date.now() > until) {
        throw new Error(`${lua} gave ${last instanceof Error ? last : JSON.stringify(last)}`);
      }
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  }

  /** Runs a Lua statement. Unlike a typed command it never leaves a prompt on the screen. */
  run(lua: string): void {
    this.ask(`(function() ${lua} end)()`);
  }

  /** The lines of a buffer, by a part of its file's name. */
  lines(name: string): string[] {
    return this.ask(
      `vim.api.nvim_buf_get_lines(vim.fn.bufnr(${JSON.stringify(name)}), 0, -1, true)`,
    ) as string[];
  }

  async stop(): Promise<void> {
    if (this.#process.exitCode !== null) return;
    const ended = new Promise((resolve) => this.#process.once("exit", resolve));
    this.#process.kill("SIGKILL");
    await ended;
  }

  #remote(how: string, what: string) {
    const args = ["--server", this.#socket, how, what];
    return spawnSync("nvim", args, { encoding: "utf8", timeout: ANSWER_MS });
  }
}

/** As a string of Vim's, in which only the quote itself is doubled. */
function quoted(text: string): string {
  return `'${text.replaceAll("'", "''")}'`;
}
