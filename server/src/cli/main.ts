#!/usr/bin/env node
/** The command line's entry: arguments in, exit code out. */
import { run } from "./run.ts";
import { processTerminal } from "./terminal.ts";

// Not process.exit(): output that is still on its way must arrive.
process.exitCode = await run(process.argv.slice(2), processTerminal(), process.cwd());
