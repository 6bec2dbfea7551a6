import type { Migration } from './runMigrations'

/**
 * One entry for every published version that is no longer current, oldest first. Version 1 is the current one, so there
 * is none yet. To change the schema: raise PLAN_VERSION, add `vN.ts` with its Migration here, and freeze a file of the
 * old version and the new schema's hash in tests/migrations; the tests there say what is missing.
 */
export const MIGRATIONS: readonly Migration[] = []
