// Traces every photo of a folder by simulated touches and scores it against its truth: one JSON line a photo, then a
// summary; ends with 1 where a target is missed. `npm run bench:trace -- FOLDER`; without one, tests/photos. `--spoil`
// shifts every outline that was found by 12 mm before it is scored, and takes the voids away: then it must end with 1.
import { readdirSync } from 'node:fs'
import { resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { runnerImport } from 'vite'

const root = fileURLToPath(new URL('../../../', import.meta.url))
const [given] = process.argv.slice(2).filter((word) => !word.startsWith('--'))
const folder = given === undefined ? fileURLToPath(new URL('../../photos/', import.meta.url)) : resolve(given)
const { module } = await runnerImport(fileURLToPath(new URL('tracePhoto.ts', import.meta.url)), {
  root,
  configFile: false,
  logLevel: 'error',
})
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
const photos = files
  .filter((file) => /\.jpe?g$/i.test(file) && files.includes(file.replace(/\.jpe?g$/i, '.json')))
  .toSorted()
if (photos.length === 0) {
  console.error(`${folder} holds no photo with a truth file beside it`)
  process.exit(1)
}
const spoilMm = process.argv.includes('--spoil') ? 12 : 0
const lines = []
for (const photo of photos) {
  const line = module.tracePhoto(resolve(folder, photo), photo, spoilMm)
  lines.push(line)
  console.log(JSON.stringify(line))
}
const summary = module.summaryOf(lines)
console.log(JSON.stringify(summary))
if (summary.missed.length > 0) console.error(`missed: ${summary.missed.join('; ')}`)
process.exitCode = summary.missed.length > 0 ? 1 : 0
