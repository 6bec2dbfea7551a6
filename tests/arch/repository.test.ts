import { describe, expect, it } from 'vitest'
import { folderOrder } from './boundaryRules'
import { isTestFile } from './importGraph'
import { readTracked, trackedFiles, trackedTexts } from './trackedFiles'

const TOP_LEVEL = [
  '.ci',
  '.dependency-cruiser.cjs',
  '.gitattributes',
  '.gitignore',
  '.knip.json',
  '.npmrc',
  '.oxlintrc.json',
  '.prettierignore',
  '.prettierrc.json',
  '.scripts',
  'DEVELOPERS.md',
  'LICENSE',
  'README.md',
  'demo-data',
  'docs',
  'index.html',
  'package-lock.json',
  'package.json',
  'public',
  'src',
  'tests',
  'tsconfig.json',
  'vite.config.ts',
]

const MAX_LINES = 300

/** Patterns are split so that this file does not find itself. */
const MACHINE_PATH = new RegExp(
  String.raw`(?:^|[\s"'\`(=:])/(?:${['work', 'tmp', 'root', 'home', 'Users'].join('|')})/\w`,
)
const PACKAGE_HOST = new RegExp(
  `https?://[\\w.-]*(?:${['np' + 'm', 'registry', 'debian', 'mirror'].join('|')})`,
  'i',
)
const SILENCED_RULE = new RegExp(`(?:${['eslint', 'oxlint'].join('|')})-disable|@ts-(?:ignore|nocheck)`)

const linesWith = (pattern: RegExp, files: readonly string[]): readonly string[] =>
  files.flatMap((file) =>
    readTracked(file)
      .split('\n')
      .flatMap((line, at) => (pattern.test(line) ? [`${file}:${at + 1}: ${line.trim().slice(0, 120)}`] : [])),
  )

describe('the repository', () => {
  const files = trackedFiles()
  const texts = trackedTexts()

  it('holds at its top level only what was agreed', () => {
    const names = new Set(files.map((file) => file.split('/')[0]))
    expect([...names].filter((name) => !TOP_LEVEL.includes(name ?? ''))).toEqual([])
  })

  it('has core folders of the agreed names only', () => {
    const folders = files
      .filter((file) => /^src\/core\/[^/]+\//.test(file))
      .map((file) => file.split('/')[2] ?? '')
    expect(folders.length).toBeGreaterThan(0)
    expect([...new Set(folders)].filter((folder) => !folderOrder.core.includes(folder))).toEqual([])
  })

  it('names in the index of each core folder what others may use, one by one', () => {
    const folders = folderOrder.core.filter((folder) =>
      files.some((file) => file.startsWith(`src/core/${folder}/`)),
    )
    const indexes = folders.map((folder) => `src/core/${folder}/index.ts`)
    expect(indexes.filter((index) => !files.includes(index))).toEqual([])
    expect(linesWith(/export \* /, indexes)).toEqual([])
  })

  it(`has no source file of more than ${MAX_LINES} lines`, () => {
    const long = texts
      .filter((file) => /^(src|\.scripts)\/.*\.(tsx?|mjs|css)$/.test(file) && !isTestFile(file))
      .filter((file) => readTracked(file).trimEnd().split('\n').length > MAX_LINES)
    expect(long).toEqual([])
  })

  it('names no path of a developer’s machine and no package host', () => {
    expect(linesWith(MACHINE_PATH, texts)).toEqual([])
    expect(linesWith(PACKAGE_HOST, texts)).toEqual([])
    expect(MACHINE_PATH.test(`cd "/${'home'}/ann"`)).toBe(true)
    expect(PACKAGE_HOST.test(`https://${'registry'}.example/x`)).toBe(true)
  })

  it('switches no rule off in the sources', () => {
    const sources = texts.filter(
      (file) => /^(src|tests|\.scripts)\//.test(file) && !file.startsWith('tests/arch/'),
    )
    expect(linesWith(SILENCED_RULE, sources)).toEqual([])
  })
})
