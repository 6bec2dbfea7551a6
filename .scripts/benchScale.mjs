// How true lengths are that are read off a photo: npm run bench:scale -- FOLDER [TRIALS]
import { spawnSync } from 'node:child_process'
import { resolve } from 'node:path'
import { installMissing } from './install.mjs'
import { inRoot } from './root.mjs'

installMissing()
const { build } = await import('vite')
const outDir = inRoot('node_modules', '.cache', 'bench-scale')
await build({
  configFile: false,
  logLevel: 'error',
  root: inRoot('.'),
  build: { ssr: inRoot('tests', 'bench', 'scale', 'main.ts'), outDir, emptyOutDir: true, target: 'node20' },
})
const [folder = inRoot('tests', 'photos'), ...rest] = process.argv.slice(2)
const args = [resolve(outDir, 'main.js'), resolve(folder), ...rest]
const { status, signal } = spawnSync(process.execPath, args, { stdio: 'inherit' })
if (signal) console.error(`The bench was ended from outside (${signal}).`)
process.exit(status ?? 1)
