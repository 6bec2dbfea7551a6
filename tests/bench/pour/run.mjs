// Prints every check of the pour model with its expected and found value, and the table of deepest layers, as JSON
// lines; ends with 1 where a check fails. `--spoil` adds ten tolerances to every figure: then it must end with 1.
import { fileURLToPath } from 'node:url'
import { runnerImport } from 'vite'

const root = fileURLToPath(new URL('../../../', import.meta.url))
const { module } = await runnerImport(fileURLToPath(new URL('pourBench.ts', import.meta.url)), {
  root,
  configFile: false,
  logLevel: 'error',
})
const lines = module.pourLines(process.argv.includes('--spoil') ? 10 : 0)
for (const line of lines) console.log(JSON.stringify(line))
const failed = lines.filter((line) => !line.ok)
if (failed.length > 0) console.error(`${failed.length} of ${lines.length} lines fail`)
process.exitCode = failed.length > 0 ? 1 : 0
