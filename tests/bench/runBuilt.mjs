import { spawnSync } from 'node:child_process'
import { resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'

const root = fileURLToPath(new URL('../../', import.meta.url))

/**
 * Builds a bench as it ships (modules served one by one run several times slower), runs it with the words of the command
 * line, and ends with its exit code.
 * @param {string} name its folder in tests/bench, which holds a main.ts
 */
export async function runBuilt(name) {
  const outDir = resolve(root, 'node_modules', '.cache', `bench-${name}`)
  await build({
    configFile: false,
    logLevel: 'error',
    root,
    build: {
      ssr: resolve(root, 'tests', 'bench', name, 'main.ts'),
      outDir,
      emptyOutDir: true,
      target: 'node20',
    },
  })
  const args = [resolve(outDir, 'main.js'), ...process.argv.slice(2)]
  process.exit(spawnSync(process.execPath, args, { stdio: 'inherit' }).status ?? 1)
}
