#!/usr/bin/env node
import { run } from './commands/cli.ts';

await run(process.argv.slice(2));
