export type { Migration } from './runMigrations'
export { MIGRATIONS } from './migrationList'
export { migrate } from './migrate'
export { runMigrations } from './runMigrations'
