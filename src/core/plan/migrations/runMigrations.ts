import { InvariantError, ok, problem, type Result } from '../../units'

type JsonObject = Readonly<Record<string, unknown>>

/** Turns the plain JSON of version `from` into that of version `from + 1`. Works before any check of the rest. */
export interface Migration {
  readonly from: number
  readonly migrate: (json: JsonObject) => JsonObject
}

const isObject = (json: unknown): json is JsonObject =>
  typeof json === 'object' && json !== null && !Array.isArray(json)

const step = (json: JsonObject, from: number, migrations: readonly Migration[]): JsonObject => {
  const migration = migrations.find((candidate) => candidate.from === from)
  if (migration === undefined) throw new InvariantError('no migration from this version', { from })
  return { ...migration.migrate(json), version: from + 1 }
}

/**
 * Brings a plan of any published version to the current one, step by step, on plain JSON.
 * @param current the version that this program writes
 * @returns plain JSON of the current version, still to be checked; problems 'plan-not-a-plan' {} and
 *          'plan-newer-version' {version, readable}
 * @throws InvariantError when the chain has a hole
 */
export function runMigrations(
  json: unknown,
  migrations: readonly Migration[],
  current: number,
): Result<JsonObject> {
  if (!isObject(json) || json['format'] !== 'waneline-plan') return problem('plan-not-a-plan')
  const version = json['version']
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return problem('plan-not-a-plan')
  if (version > current) return problem('plan-newer-version', { version, readable: current })
  let migrated = json
  for (let from = version; from < current; from++) migrated = step(migrated, from, migrations)
  return ok(migrated)
}
