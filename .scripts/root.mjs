import { fileURLToPath } from 'node:url'
import { dirname, join } from 'node:path'

/** The project's top folder, wherever the scripts are called from. */
export const root = dirname(dirname(fileURLToPath(import.meta.url)))

/** @param {string[]} parts */
export const inRoot = (...parts) => join(root, ...parts)
