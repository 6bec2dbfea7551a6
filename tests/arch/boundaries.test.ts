import { execFileSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, relative, sep } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { lintConfigText } from '../../.scripts/lintConfig.mjs'
import { nodeProgram } from '../../.scripts/nodeProgram.mjs'
import { brokenBoundaries, ruleNames } from './boundaryRules'
import { readImportGraph } from './importGraph'

const projectRoot = fileURLToPath(new URL('../../', import.meta.url))
const fixtures = fileURLToPath(new URL('./fixtures/', import.meta.url))

/** What the fixtures say about themselves: `rule: file`, sorted. */
const expected = (kind: 'boundary' | 'lint' | 'cruise'): readonly string[] =>
  readImportGraph(fixtures)
    .modules.flatMap((file) =>
      [...readFileSync(join(fixtures, file), 'utf8').matchAll(/^\/\/ expect (\w+): (\S+)$/gm)]
        .filter((match) => match[1] === kind)
        .map((match) => `${match[2]}: ${file}`),
    )
    .sort()

const unique = (lines: readonly string[]): readonly string[] => [...new Set(lines)].sort()

describe('imports', () => {
  it('follow the order of parts and folders, by the index, in the whole program', () => {
    const graph = readImportGraph(projectRoot)
    expect(graph.modules.length).toBeGreaterThan(0)
    expect(graph.imports.length).toBeGreaterThan(0)
    expect(brokenBoundaries(graph)).toEqual([])
  })

  it('that break a rule are found, each by its rule, and no others', () => {
    const found = brokenBoundaries(readImportGraph(fixtures)).map((line) => line.replace(/ -> .*$/, ''))
    expect(unique(found)).toEqual(expected('boundary'))
    expect(unique(found.map((line) => line.split(':')[0] ?? ''))).toEqual([...ruleNames].sort())
  })
})

describe('the tools that check every change', () => {
  // The rules name paths from the top folder, so the fixtures are laid out as a project of their own.
  let project = ''
  beforeAll(() => {
    project = mkdtempSync(join(tmpdir(), 'boundaries-'))
    cpSync(fixtures, project, { recursive: true })
    mkdirSync(join(project, '.scripts'))
    for (const file of [
      '.oxlintrc.json',
      '.dependency-cruiser.cjs',
      '.scripts/folderOrder.json',
      'tsconfig.json',
    ]) {
      cpSync(join(projectRoot, file), join(project, file))
    }
    cpSync(join(projectRoot, 'package.json'), join(project, 'package.json'))
    symlinkSync(join(projectRoot, 'node_modules'), join(project, 'node_modules'), 'junction')
  })
  afterAll(() => rmSync(project, { recursive: true, force: true }))

  /** Both tools end with an error when they find something, which is what we want here. */
  const outputOf = (command: readonly string[]): string => {
    const [program = '', ...args] = command
    try {
      return execFileSync(program, args, {
        cwd: project,
        encoding: 'utf8',
        stdio: ['ignore', 'pipe', 'pipe'],
      })
    } catch (error) {
      return String((error as { readonly stdout?: unknown }).stdout)
    }
  }

  it('lint finds each broken rule of the fixtures, and nothing in the others', () => {
    const { diagnostics } = JSON.parse(outputOf(nodeProgram('oxlint', 'src', '--format', 'json'))) as {
      readonly diagnostics: readonly { readonly code: string; readonly filename: string }[]
    }
    const found = diagnostics.map(
      ({ code, filename }) =>
        `${code.replace(/^.*\((.*)\)$/, '$1')}: ${relative(project, join(project, filename)).split(sep).join('/')}`,
    )
    expect(unique(found)).toEqual(expected('lint'))
  })

  it('dependency-cruiser reads all modules and finds each broken path', () => {
    const report = JSON.parse(
      outputOf(
        nodeProgram(
          'dependency-cruiser',
          'src',
          '--config',
          '.dependency-cruiser.cjs',
          '--output-type',
          'json',
        ),
      ),
    ) as {
      readonly summary: {
        readonly totalCruised: number
        readonly violations: readonly { readonly from: string; readonly rule: { readonly name: string } }[]
      }
    }
    expect(report.summary.totalCruised).toBeGreaterThanOrEqual(readImportGraph(fixtures).modules.length)
    const found = report.summary.violations.map(({ from, rule }) => `${rule.name}: ${from}`)
    expect(unique(found)).toEqual(expected('cruise'))
  })

  it('the lint settings are those made from the list of folders', async () => {
    expect(readFileSync(join(projectRoot, '.oxlintrc.json'), 'utf8')).toBe(await lintConfigText())
  })
})
