import { inRoot } from './root.mjs'
import { nodeProgram } from './nodeProgram.mjs'

/** The steps that read the sources without running them, shared by `npm test` and `npm run check`. */
export const qualitySteps = () => [
  { name: 'types', command: [process.execPath, inRoot('.scripts', 'types.mjs')] },
  { name: 'lint', command: nodeProgram('oxlint', '--deny-warnings') },
  { name: 'format', command: nodeProgram('prettier', '--check', '.', '--log-level', 'warn') },
]
