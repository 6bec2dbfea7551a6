/**
 * Writes src/core/drawing/sourceSans3.json, the table of advance widths that the sheets are laid out by.
 * Run by hand when the font package changes: `node tests/support/writeFontMetrics.mjs`.
 * It reads the uncompressed tables of the package's WOFF files itself, so that the test of the table can hold it
 * against another reader (fontkit, on the WOFF2 files that are shipped).
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { inflateSync } from 'node:zlib'

const root = new URL('../../', import.meta.url)
const packageUrl = new URL('node_modules/@fontsource/source-sans-3/', root)
const SUBSETS = ['latin', 'latin-ext', 'greek', 'cyrillic', 'vietnamese']
const WEIGHTS = { regular: 400, bold: 600 }
/** Plain characters that can be seen in a text file: Latin, Greek, Cyrillic, Vietnamese, and the signs of a drawing. */
const RANGES = [
  [0x20, 0x7e],
  [0xa1, 0xac],
  [0xae, 0x17f],
  [0x218, 0x21b],
  [0x386, 0x3ce],
  [0x400, 0x45f],
  [0x490, 0x491],
  [0x1ea0, 0x1ef9],
  [0x2013, 0x2014],
  [0x2018, 0x201e],
  [0x2020, 0x2022],
  [0x2026, 0x2026],
  [0x2032, 0x2033],
  [0x20ac, 0x20ac],
  [0x2116, 0x2116],
  [0x2212, 0x2212],
]
const isKept = (code) => RANGES.some(([first, last]) => code >= first && code <= last)

/** Letters and figures whose ink says how high and how low a line of text reaches. */
const INK_SAMPLE = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789()/'

/** Tables of a WOFF 1 file by tag (W3C WOFF 1.0, section 5: each is zlib-deflated unless it did not get smaller). */
function woffTables(bytes) {
  if (bytes.toString('latin1', 0, 4) !== 'wOFF') throw new Error('not a WOFF file')
  const tables = new Map()
  for (let entry = 0; entry < bytes.readUInt16BE(12); entry++) {
    const at = 44 + entry * 20
    const [offset, packed, length] = [4, 8, 12].map((step) => bytes.readUInt32BE(at + step))
    const body = bytes.subarray(offset, offset + packed)
    tables.set(bytes.toString('latin1', at, at + 4), packed < length ? inflateSync(body) : body)
  }
  return tables
}

function tableOf(tables, tag) {
  const table = tables.get(tag)
  if (!table) throw new Error(`the font has no ${tag} table`)
  return table
}

/** Code point → glyph index from a cmap subtable of format 4 (OpenType specification, cmap). */
function characterMap(cmap) {
  const places = Array.from({ length: cmap.readUInt16BE(2) }, (_, k) => cmap.readUInt32BE(8 + 8 * k))
  const at = places.find((place) => cmap.readUInt16BE(place) === 4)
  if (at === undefined) throw new Error('the font has no cmap of format 4')
  const doubled = cmap.readUInt16BE(at + 6)
  const map = new Map()
  for (let step = 0; step < doubled; step += 2) {
    const last = cmap.readUInt16BE(at + 14 + step)
    const first = cmap.readUInt16BE(at + 16 + doubled + step)
    const delta = cmap.readUInt16BE(at + 16 + 2 * doubled + step)
    const rangePlace = at + 16 + 3 * doubled + step
    const range = cmap.readUInt16BE(rangePlace)
    for (let code = first; code <= last && code !== 0xffff; code++) {
      const raw = range === 0 ? code : cmap.readUInt16BE(rangePlace + range + 2 * (code - first))
      const glyph = range !== 0 && raw === 0 ? 0 : (raw + delta) & 0xffff
      if (glyph !== 0) map.set(code, glyph)
    }
  }
  return map
}

function readGlyphs(subset, weight) {
  const file = new URL(`files/source-sans-3-${subset}-${weight}-normal.woff`, packageUrl)
  const tables = woffTables(readFileSync(file))
  const hmtx = tableOf(tables, 'hmtx')
  const longMetrics = tableOf(tables, 'hhea').readUInt16BE(34)
  const glyphs = new Map()
  for (const [code, index] of characterMap(tableOf(tables, 'cmap'))) {
    glyphs.set(code, { index, advance: hmtx.readUInt16BE(4 * Math.min(index, longMetrics - 1)) })
  }
  return { glyphs, tables }
}

/** Highest and lowest ink of the sample, from the glyph headers of the glyf table. */
function inkOf({ glyphs, tables }) {
  const loca = tableOf(tables, 'loca')
  const long = tableOf(tables, 'head').readInt16BE(50) === 1
  const glyf = tableOf(tables, 'glyf')
  const boxes = [...INK_SAMPLE].map((letter) => {
    const { index } = glyphs.get(letter.codePointAt(0))
    const at = long ? loca.readUInt32BE(4 * index) : 2 * loca.readUInt16BE(2 * index)
    return { low: glyf.readInt16BE(at + 4), high: glyf.readInt16BE(at + 8) }
  })
  return { top: Math.max(...boxes.map((box) => box.high)), bottom: Math.min(...boxes.map((box) => box.low)) }
}

/** Characters by their advance width: a short file that a person can still read. */
function charactersByWidth(weight) {
  const advances = new Map()
  for (const subset of SUBSETS) {
    for (const [code, { advance }] of readGlyphs(subset, weight).glyphs) {
      if (isKept(code) && !advances.has(code)) advances.set(code, advance)
    }
  }
  const byWidth = {}
  for (const [code, advance] of [...advances].sort(([a], [b]) => a - b)) {
    byWidth[advance] = (byWidth[advance] ?? '') + String.fromCodePoint(code)
  }
  return byWidth
}

const regular = readGlyphs('latin', WEIGHTS.regular)
const bold = readGlyphs('latin', WEIGHTS.bold)
const hhea = tableOf(regular.tables, 'hhea')
const inks = [inkOf(regular), inkOf(bold)]
const version = JSON.parse(readFileSync(new URL('package.json', packageUrl), 'utf8')).version
const metrics = {
  family: 'Source Sans 3',
  source: `advance widths of @fontsource/source-sans-3 ${version} (SIL Open Font License 1.1), subsets ${SUBSETS.join(', ')}; written by tests/support/writeFontMetrics.mjs`,
  weights: WEIGHTS,
  unitsPerEm: tableOf(regular.tables, 'head').readUInt16BE(18),
  ascent: hhea.readInt16BE(4),
  descent: hhea.readInt16BE(6),
  capHeight: tableOf(regular.tables, 'OS/2').readInt16BE(88),
  inkTop: Math.max(...inks.map((ink) => ink.top)),
  inkBottom: Math.min(...inks.map((ink) => ink.bottom)),
  charactersByWidth: { regular: charactersByWidth(WEIGHTS.regular), bold: charactersByWidth(WEIGHTS.bold) },
}
writeFileSync(
  fileURLToPath(new URL('src/core/drawing/sourceSans3.json', root)),
  `${JSON.stringify(metrics, null, 2)}\n`,
)
