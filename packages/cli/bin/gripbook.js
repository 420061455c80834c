#!/usr/bin/env node
import { main, processWorld } from '../dist/index.js'

process.exitCode = await main(process.argv.slice(2), processWorld(process))
