// Checks the types of each part with the libraries that this part may use (core has no DOM, workers have no window).
import { spawnSync } from 'node:child_process'
import { installMissing } from './install.mjs'
import { root } from './root.mjs'
import { nodeProgram } from './nodeProgram.mjs'

installMissing()
const parts = ['src/core', 'src/workers', 'src/ui', 'tests', '.scripts']
const failed = parts.filter((part) => {
  const [program, ...args] = nodeProgram('typescript', '-p', `${part}/tsconfig.json`, '--pretty', 'false')
  return spawnSync(program, args, { cwd: root, stdio: 'inherit' }).status !== 0
})
if (failed.length > 0) {
  console.error(`Types do not fit in: ${failed.join(', ')}`)
  process.exit(1)
}
