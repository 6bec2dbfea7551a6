import { readFileSync } from 'node:fs'
import { inRoot } from './root.mjs'

/**
 * A program of an installed package, called through Node so that it works on every system.
 * @param {string} packageName
 * @param {string[]} args
 * @returns {[string, ...string[]]} the command line
 */
export const nodeProgram = (packageName, ...args) => {
  const { bin } = JSON.parse(readFileSync(inRoot('node_modules', packageName, 'package.json'), 'utf8'))
  const named = { typescript: 'tsc' }[packageName] ?? packageName
  const file = typeof bin === 'string' ? bin : bin[named]
  if (!file) throw new Error(`the package ${packageName} has no program ${named}`)
  return [process.execPath, inRoot('node_modules', packageName, file), ...args]
}
