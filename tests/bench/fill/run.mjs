// Plants puzzles and makes slabs from a seed and fills them, beside what is best known and a plain solver: one JSON line a
// case, then a summary; ends with 1 where a figure is missed. npm run bench:fill -- --seed N [--spoil] [--puzzles COUNT]
// [--known SECONDS] [--record SECONDS: prints the best known instead]. Built as it ships: modules served one by one run several times slower.
import { spawnSync } from 'node:child_process'
import { resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'

const root = fileURLToPath(new URL('../../../', import.meta.url))
const outDir = resolve(root, 'node_modules', '.cache', 'bench-fill')
await build({
  configFile: false,
  logLevel: 'error',
  root,
  build: {
    ssr: fileURLToPath(new URL('main.ts', import.meta.url)),
    outDir,
    emptyOutDir: true,
    target: 'node20',
  },
})
const args = [resolve(outDir, 'main.js'), ...process.argv.slice(2)]
process.exit(spawnSync(process.execPath, args, { stdio: 'inherit' }).status ?? 1)
