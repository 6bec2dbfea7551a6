import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, sep } from 'node:path'
import ts from 'typescript'

export interface Import {
  /** File within the folder read, with forward slashes, e.g. `src/core/units/index.ts`. */
  readonly from: string
  /** A file within the folder read, or the name of a package as it is imported. */
  readonly to: string
  readonly isPackage: boolean
}

export interface ImportGraph {
  readonly modules: readonly string[]
  readonly imports: readonly Import[]
}

const isModule = (file: string): boolean => /\.tsx?$/.test(file) && !file.endsWith('.d.ts')

/** Tests stand beside their file but are no part of the program. */
export const isTestFile = (file: string): boolean => /\.test(-d)?\.tsx?$/.test(file)

/**
 * What a module names to be loaded: imports and exports (of types, too), `import()` in code and in types, and
 * `new URL('./x', import.meta.url)`, by which workers are started.
 */
const namedIn = (text: string): readonly string[] => [
  ...ts.preProcessFile(text, true, true).importedFiles.map(({ fileName }) => fileName),
  ...[...text.matchAll(/new URL\(\s*['"]([^'"]+)['"]\s*,\s*import\.meta\.url/g)].map(
    (match) => match[1] ?? '',
  ),
]

const ENDINGS = ['', '.ts', '.tsx', '/index.ts', '/index.tsx']

const resolveFile = (fromFile: string, named: string): string => {
  const target = join(dirname(fromFile), named.replace(/\?.*$/, ''))
  const file = ENDINGS.map((ending) => target + ending).find(
    (path) => existsSync(path) && /\.\w+$/.test(path.slice(path.lastIndexOf(sep))),
  )
  if (!file) throw new Error(`${fromFile} imports ${named}, which is not there`)
  return file
}

/**
 * Reads which module imports which in `ROOT/src`.
 * @param root folder that holds `src`
 * @throws Error when an import leads nowhere
 */
export const readImportGraph = (root: string): ImportGraph => {
  const named = (path: string): string => relative(root, path).split(sep).join('/')
  const files = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
    .filter(isModule)
    .map((file) => join(root, 'src', file))
    .sort()
  const imports = files.flatMap((file) =>
    namedIn(readFileSync(file, 'utf8')).map((target): Import => {
      const isPackage = !target.startsWith('.')
      return { from: named(file), to: isPackage ? target : named(resolveFile(file, target)), isPackage }
    }),
  )
  return { modules: files.map(named), imports }
}
