import type { Result } from '../../units'
import { PLAN_VERSION } from '../planLimits'
import { MIGRATIONS } from './migrationList'
import { runMigrations } from './runMigrations'

/** The plain JSON of a plan, whatever its version, as plain JSON of the current version. Problems: see runMigrations. */
export const migrate = (json: unknown): Result<Readonly<Record<string, unknown>>> =>
  runMigrations(json, MIGRATIONS, PLAN_VERSION)
