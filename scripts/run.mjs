// Runs the tools that the scripts are made of.
import { spawn } from "node:child_process";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The project's root folder. */
export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));

/**
 * Runs a program with this terminal and resolves with its exit code.
 * @param {string} program
 * @param {string[]} args
 * @param {{ cwd?: string, env?: NodeJS.ProcessEnv, shell?: boolean }} [options]
 * @returns {Promise<number>} 1 as well when the program was ended by a signal
 */
export function run(program, args, { cwd = ROOT, env = process.env, shell = false } = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, { cwd, env, shell, stdio: "inherit" });
    child.on("error", reject);
    child.on("close", (code) => resolve(code ?? 1));
  });
}

/**
 * Runs a script file with this Node.
 * @param {string} script path from the root folder
 * @param {string[]} [args]
 * @param {{ cwd?: string, env?: NodeJS.ProcessEnv }} [options]
 */
export function node(script, args = [], options = {}) {
  return run(process.execPath, [join(ROOT, script), ...args], options);
}
