import { readFileSync, readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import * as z from 'zod/mini'
import { parsePlan, PLAN_VERSION, planSchema } from '../../src/core/plan'
import { type Migration, MIGRATIONS, runMigrations } from '../../src/core/plan/migrations'
import { describeSchema, schemaHash } from './describeSchema'

const here = (name: string): URL => new URL(name, import.meta.url)
const readJson = (name: string): unknown => JSON.parse(readFileSync(here(name), 'utf8'))

const VERSIONS = Array.from({ length: PLAN_VERSION }, (_, n) => n + 1)
const frozen = (version: number): string => `./v${version}.plan.json`

/** The hash of every published schema. A published row is never changed: a changed schema is a new version. */
const HASHES = z.record(z.string(), z.string()).parse(readJson('./schemaHashes.json'))

/** A chain such as later versions will have: `width` becomes `widthMm`, then a note joins. */
const CHAIN: readonly Migration[] = [
  {
    from: 1,
    migrate: ({ width, ...rest }) => ({ ...rest, widthMm: Number(width) * 10 }),
  },
  { from: 2, migrate: (json) => ({ ...json, note: '' }) },
]

describe('the chain of migrations', () => {
  it('PLN-7 leads an old plan through every version in turn', () => {
    const seen: number[] = []
    const watched = CHAIN.map(({ from, migrate }) => ({
      from,
      migrate: (json: Readonly<Record<string, unknown>>) => {
        seen.push(from)
        return migrate(json)
      },
    }))
    const old = { format: 'waneline-plan', version: 1, width: 90 }
    expect(runMigrations(old, watched, 3)).toEqual({
      ok: true,
      value: { format: 'waneline-plan', version: 3, widthMm: 900, note: '' },
    })
    expect(seen).toEqual([1, 2])
    expect(old).toEqual({ format: 'waneline-plan', version: 1, width: 90 })
  })

  it('PLN-7 starts in the middle for a plan of a middle version, and leaves a current one alone', () => {
    const middle = { format: 'waneline-plan', version: 2, widthMm: 900 }
    expect(runMigrations(middle, CHAIN, 3)).toEqual({ ok: true, value: { ...middle, version: 3, note: '' } })
    const current = { ...middle, version: 3 }
    expect(runMigrations(current, CHAIN, 3)).toEqual({ ok: true, value: current })
  })

  it('PLN-7 refuses a version from the future and throws when a link is missing', () => {
    expect(runMigrations({ format: 'waneline-plan', version: 4 }, CHAIN, 3)).toEqual({
      ok: false,
      problem: { code: 'plan-newer-version', values: { version: 4, readable: 3 } },
    })
    expect(() => runMigrations({ format: 'waneline-plan', version: 1 }, CHAIN.slice(1), 3)).toThrow(
      'no migration',
    )
  })

  it('has exactly one migration for every older version', () => {
    expect(MIGRATIONS.map(({ from }) => from)).toEqual(VERSIONS.slice(0, -1))
  })

  it.each(VERSIONS)(
    'PLN-7 opens the frozen plan of version %i whole, every later migration included',
    (version) => {
      const run = new Set<number>()
      const watched = MIGRATIONS.map(({ from, migrate }) => ({
        from,
        migrate: (json: Readonly<Record<string, unknown>>) => {
          run.add(from)
          return migrate(json)
        },
      }))
      const json = readJson(frozen(version))
      const migrated = runMigrations(json, watched, PLAN_VERSION)
      expect([...run]).toEqual(VERSIONS.filter((from) => from >= version && from < PLAN_VERSION))
      expect(migrated.ok && planSchema.safeParse(migrated.value).error).toBeUndefined()
      expect(parsePlan(json)).toMatchObject({ ok: true, value: { lost: [] } })
    },
  )

  it('has a frozen plan for every version, and each says so itself', () => {
    const frozenFiles = readdirSync(here('./')).filter((name) => name.endsWith('.plan.json'))
    expect(frozenFiles.toSorted()).toEqual(VERSIONS.map((version) => `v${version}.plan.json`).toSorted())
    for (const version of VERSIONS) expect(readJson(frozen(version))).toMatchObject({ version })
  })
})

/** Every value of every `kind` that a schema in JSON form knows. */
function kindsIn(schema: unknown): readonly string[] {
  if (typeof schema !== 'object' || schema === null) return []
  const own = Object.entries(schema).flatMap(([key, value]: [string, unknown]) =>
    key === 'kind' && typeof value === 'object' && value !== null && 'const' in value
      ? [String(value.const)]
      : [],
  )
  return [...own, ...Object.values(schema).flatMap(kindsIn)]
}

describe('the frozen plan of the current version', () => {
  it('holds at least one of every kind of thing, so that a migration meets them all', () => {
    const text = readFileSync(here(frozen(PLAN_VERSION)), 'utf8')
    const kinds = new Set(kindsIn(JSON.parse(describeSchema())))
    expect(kinds.size).toBeGreaterThan(10)
    for (const kind of kinds) expect(text).toContain(`"kind": "${kind}"`)
  })
})

describe('published schemas', () => {
  it('PLN-9 are as they were published: to change one, raise PLAN_VERSION, add a migration and a frozen plan', () => {
    expect(Object.keys(HASHES)).toEqual(VERSIONS.map(String))
    expect(schemaHash()).toBe(HASHES[String(PLAN_VERSION)])
  })

  it('PLN-9 show in their hash every new key, limit and choice', () => {
    const base = z.strictObject({ a: z.number().check(z.maximum(5)), kind: z.enum(['x']) })
    const changed = [
      z.strictObject({ a: z.number().check(z.maximum(6)), kind: z.enum(['x']) }),
      z.strictObject({ a: z.number().check(z.maximum(5)), kind: z.enum(['x', 'y']) }),
      z.strictObject({ a: z.number().check(z.maximum(5)), kind: z.enum(['x']), b: z.string() }),
      z.strictObject({ a: z.nullable(z.number().check(z.maximum(5))), kind: z.enum(['x']) }),
    ]
    const hashes = [base, ...changed].map((schema) => schemaHash(schema))
    expect(new Set(hashes).size).toBe(hashes.length)
  })

  it('PLN-9 describe the deepest parts of a plan too', () => {
    for (const word of ['castThicknessMm', 'turnedOver', 'ringPx', 'kerfMm', 'leftMm']) {
      expect(describeSchema()).toContain(`"${word}"`)
    }
  })
})
