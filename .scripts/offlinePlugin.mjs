import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { inRoot } from './root.mjs'

const WORKER = 'offline.js'

/** @param {string | Uint8Array} bytes */
const sha256 = (bytes) => createHash('sha256').update(bytes).digest('hex')

/**
 * @param {string} folder
 * @param {string} [within]
 * @returns {string[]} paths of all files in it, with slashes
 */
const filesIn = (folder, within = '') =>
  readdirSync(join(folder, within)).flatMap((name) => {
    const path = within === '' ? name : `${within}/${name}`
    return statSync(join(folder, path)).isDirectory() ? filesIn(folder, path) : [path]
  })

/** Fonts in the older packing are for browsers that cannot work offline anyway. */
const isNeeded = (/** @type {string} */ path) =>
  path !== WORKER && !path.startsWith('.vite/') && !/\.(?:woff|map)$/.test(path)

/**
 * Builds src/workers/offline.worker.ts as `offline.js` beside index.html and writes into it the list of all built files
 * with the hash of each.
 * @returns {import('vite').Plugin}
 */
export const offlinePlugin = () => ({
  name: 'offline',
  apply: 'build',
  enforce: 'post',
  config: () => ({
    build: {
      rolldownOptions: {
        input: { index: inRoot('index.html'), offline: inRoot('src', 'workers', 'offline.worker.ts') },
        output: {
          entryFileNames: (chunk) => (chunk.name === 'offline' ? WORKER : 'assets/[name]-[hash].js'),
        },
      },
    },
  }),
  generateBundle: {
    order: 'post',
    handler(_options, bundle) {
      const worker = bundle[WORKER]
      if (worker?.type !== 'chunk') throw new Error(`the build made no ${WORKER}`)
      if (worker.imports.length + worker.exports.length > 0) throw new Error(`${WORKER} must stand alone`)
      const built = Object.values(bundle).map((file) => ({
        path: file.fileName,
        sha256: sha256(file.type === 'chunk' ? file.code : file.source),
      }))
      const copied = filesIn(inRoot('public')).map((path) => ({
        path,
        sha256: sha256(readFileSync(inRoot('public', path))),
      }))
      const files = [...built, ...copied]
        .filter(({ path }) => isNeeded(path))
        .toSorted((a, b) => (a.path < b.path ? -1 : 1))
      const text = JSON.stringify(files)
      worker.code = `const BUILT_FILES=${text},BUILT_VERSION=${JSON.stringify(sha256(text).slice(0, 16))};\n${worker.code}`
    },
  },
})
