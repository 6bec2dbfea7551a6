import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync } from 'node:fs'
import { installMissing } from './install.mjs'
import { inRoot, root } from './root.mjs'
import { nodeProgram } from './nodeProgram.mjs'

/**
 * Runs all files of a test project that is too long for `npm test`, and ends the process with its exit code.
 * @param {string} project its name in vite.config.ts, its folder in tests, and the ending of its files
 */
export const measure = (project) => {
  installMissing()
  const folder = inRoot('tests', project)
  const files = existsSync(folder)
    ? readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
        name.endsWith(`.${project}.ts`),
      )
    : []
  if (files.length === 0) {
    console.log(`There is nothing to run yet: no file tests/${project}/**/*.${project}.ts.`)
    process.exit(0)
  }
  const [program, ...args] = nodeProgram('vitest', 'run', '--project', project, ...process.argv.slice(2))
  process.exit(spawnSync(program, args, { cwd: root, stdio: 'inherit' }).status ?? 1)
}
