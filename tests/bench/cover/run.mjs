// Makes slabs from a seed, runs every search on them, attacks what they prove, and times them: one JSON line a case, then
// a summary; ends with 1 where a figure is missed. npm run bench:cover -- --seed N [--slabs COUNT] [--sabotage]
// Built as it ships: modules served one by one run several times slower.
import { spawnSync } from 'node:child_process'
import { resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'

const root = fileURLToPath(new URL('../../../', import.meta.url))
const outDir = resolve(root, 'node_modules', '.cache', 'bench-cover')
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
