import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { stripVTControlCharacters } from 'node:util'
import { nodeProgram } from './nodeProgram.mjs'
import { inRoot, root } from './root.mjs'

const sources = [
  'src',
  'public',
  'demo-data',
  'index.html',
  'vite.config.ts',
  'package-lock.json',
  'tsconfig.json',
]

/**
 * @param {string} path file or folder
 * @returns {number} the latest change of it or of anything in it, ms since 1970; 0 when there is no such path
 */
const latestChangeMs = (path) => {
  if (!existsSync(path)) return 0
  const stats = statSync(path)
  if (!stats.isDirectory()) return stats.mtimeMs
  // A removed file shows only in the time of its folder.
  return readdirSync(path).reduce(
    (latest, name) => Math.max(latest, latestChangeMs(join(path, name))),
    stats.mtimeMs,
  )
}

/** Whether `dist` was built after the last change of anything that goes into it. */
export const isBuilt = () => {
  const built = inRoot('dist', 'index.html')
  if (!existsSync(built)) return false
  const builtMs = statSync(built).mtimeMs
  return sources.every((source) => latestChangeMs(inRoot(source)) < builtMs)
}

/**
 * Builds `dist` unless it is up to date. Packages must be installed.
 * A process of its own, because a test runner's NODE_ENV would make a build for development.
 * @throws Error with what the build said when it fails
 */
export const buildIfStale = () => {
  if (isBuilt()) return
  const [program, ...args] = nodeProgram('vite', 'build', '--logLevel', 'warn')
  const { status, stdout, stderr } = spawnSync(program, args, {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, NODE_ENV: 'production' },
  })
  if (status !== 0) throw new Error(`The build failed:\n${stripVTControlCharacters(stdout + stderr)}`)
}
