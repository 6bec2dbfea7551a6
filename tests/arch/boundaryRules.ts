import { readFileSync } from 'node:fs'
import { z } from 'zod'
import { type Import, type ImportGraph, isTestFile } from './importGraph'

/** The one list of parts and folders, which the lint rules and dependency-cruiser are made from, too. */
export const folderOrder = z
  .object({
    parts: z.array(z.string()),
    core: z.array(z.string()),
    corePackages: z.record(z.string(), z.array(z.string())),
  })
  .parse(JSON.parse(readFileSync(new URL('../../.scripts/folderOrder.json', import.meta.url), 'utf8')))

interface Place {
  readonly part: string
  /** Folder within core; empty elsewhere. */
  readonly folder: string
}

const placeOf = (file: string): Place => {
  const [, part = '', folder = ''] = file.split('/')
  return { part, folder: part === 'core' ? folder : '' }
}

type Rule = (edge: Import, from: Place, to: Place) => boolean

const isAhead = (order: readonly string[], from: string, to: string): boolean =>
  order.indexOf(to) > order.indexOf(from)

const packageName = (named: string): string =>
  named
    .split('/')
    .slice(0, named.startsWith('@') ? 2 : 1)
    .join('/')

const REACT = ['react', 'react-dom', 'react-konva', 'konva', 'react-aria-components']

/** Each rule says whether an import breaks it. */
const rules: Readonly<Record<string, Rule>> = {
  'parts-in-order': ({ isPackage }, from, to) => !isPackage && isAhead(folderOrder.parts, from.part, to.part),
  'core-in-order': ({ isPackage }, from, to) =>
    !isPackage &&
    from.part === 'core' &&
    to.part === 'core' &&
    isAhead(folderOrder.core, from.folder, to.folder),
  'core-by-index': ({ isPackage, to: file }, from, to) =>
    !isPackage &&
    to.part === 'core' &&
    (from.part !== 'core' || from.folder !== to.folder) &&
    file !== `src/core/${to.folder}/index.ts`,
  'core-packages': ({ isPackage, from: file, to: named }, from) =>
    isPackage &&
    from.part === 'core' &&
    !isTestFile(file) &&
    !(folderOrder.corePackages[from.folder] ?? []).includes(packageName(named)),
  'react-in-ui-only': ({ isPackage, from: file, to: named }, from) =>
    isPackage && from.part !== 'ui' && !isTestFile(file) && REACT.includes(packageName(named)),
  'nothing-outside-src': ({ isPackage, from: file, to }) =>
    !isPackage && !isTestFile(file) && !/^(src|demo-data)\//.test(to),
  'no-test-files': ({ isPackage, from: file, to }) => !isPackage && !isTestFile(file) && isTestFile(to),
}

/** @returns one line per broken rule: `rule: from -> to`, sorted */
export const brokenBoundaries = (graph: ImportGraph): readonly string[] =>
  graph.imports
    .flatMap((edge) => {
      const from = placeOf(edge.from)
      const to = edge.isPackage ? { part: '', folder: '' } : placeOf(edge.to)
      return Object.entries(rules)
        .filter(([, isBroken]) => isBroken(edge, from, to))
        .map(([name]) => `${name}: ${edge.from} -> ${edge.to}`)
    })
    .sort()

export const ruleNames: readonly string[] = Object.keys(rules)
