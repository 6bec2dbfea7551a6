import { readFileSync } from 'node:fs'
import { gzipSync } from 'node:zlib'
import { inRoot } from './root.mjs'

/** @typedef {{ file: string, isEntry?: boolean, imports?: string[] }} ManifestChunk */

/**
 * What the browser fetches as script before the page can be used: the entry, its static imports, and what the page
 * asks to preload. Workers and parts that load on demand do not count.
 * @param {string} html
 * @param {Record<string, ManifestChunk>} manifest
 * @returns {string[]} file names within dist, sorted
 */
export const firstLoadFiles = (html, manifest) => {
  const files = new Set(
    [...html.matchAll(/<(?:script|link)\b[^>]*\b(?:src|href)="\.?\/?([^"]+\.js)"[^>]*>/g)].map(
      (match) => /** @type {string} */ (match[1]),
    ),
  )
  if (files.size === 0) throw new Error('dist/index.html loads no script')
  const chunkByFile = new Map(Object.values(manifest).map((chunk) => [chunk.file, chunk]))
  // A Set also visits what is added to it during the visit.
  for (const file of files) {
    for (const key of chunkByFile.get(file)?.imports ?? []) {
      const chunk = manifest[key]
      if (!chunk) throw new Error(`the manifest has no entry ${key}, which ${file} imports`)
      files.add(chunk.file)
    }
  }
  return [...files].sort()
}

/** @param {number} bytes */
const kB = (bytes) => `${(bytes / 1000).toFixed(1)} kB`

/**
 * Weighs the first-load script of `dist`, gzipped.
 * @returns {string} one line that says the size
 * @throws Error naming each file and its size when they are heavier than the budget
 */
export const firstLoadRemark = () => {
  const html = readFileSync(inRoot('dist', 'index.html'), 'utf8')
  const manifest = JSON.parse(readFileSync(inRoot('dist', '.vite', 'manifest.json'), 'utf8'))
  const { firstLoadScriptGzBytes } = JSON.parse(
    readFileSync(inRoot('tests', 'bench', 'budgets.json'), 'utf8'),
  )
  const weights = firstLoadFiles(html, manifest).map((file) => ({
    file,
    gzBytes: gzipSync(readFileSync(inRoot('dist', file)), { level: 9 }).length,
  }))
  const totalBytes = weights.reduce((sum, { gzBytes }) => sum + gzBytes, 0)
  const line = `${kB(totalBytes)} gz of ${kB(firstLoadScriptGzBytes)}`
  if (totalBytes <= firstLoadScriptGzBytes) return line
  const files = weights.map(({ file, gzBytes }) => `${kB(gzBytes).padStart(10)}  ${file}`)
  throw new Error([`The first load is too heavy: ${line}`, ...files].join('\n'))
}
