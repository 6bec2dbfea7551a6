import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { inRoot, root } from './root.mjs'

/**
 * @typedef {{ version?: string, optional?: boolean, link?: boolean }} LockedPackage
 * @param {string} file
 * @returns {Record<string, LockedPackage>}
 */
const lockedPackages = (file) => JSON.parse(readFileSync(file, 'utf8')).packages ?? {}

/**
 * Whether every package of the lock file is in node_modules in its locked version. Versions are compared, not
 * file times: a branch change touches the lock file without changing a package. Optional packages may be missing,
 * for most are builds for other systems.
 */
export const isInstalled = () => {
  const installedFile = inRoot('node_modules', '.package-lock.json')
  if (!existsSync(installedFile)) return false
  const installed = lockedPackages(installedFile)
  return Object.entries(lockedPackages(inRoot('package-lock.json'))).every(
    ([path, { version, optional }]) => path === '' || optional || installed[path]?.version === version,
  )
}

/** Installs the locked packages when any is missing. Ends the process when that fails, with a sentence that says why. */
export const installMissing = () => {
  if (isInstalled()) return
  console.log('Installing packages (npm ci) ...')
  const { status, error } = spawnSync('npm', ['ci', '--no-audit', '--no-fund', '--loglevel', 'error'], {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  })
  if (status === 0) return
  console.error(
    `The packages could not be installed${error ? ` (${error.message})` : ''}. See the message above; is there a network?`,
  )
  process.exit(1)
}
