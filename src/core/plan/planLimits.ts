/** The version that this program writes. Older ones are migrated first (migrations/), newer ones are refused. */
export const PLAN_VERSION = 1

/** Greatest length that a plan may state, mm. Longer than any slab or table; keeps every figure finite. */
export const GREATEST_LENGTH_MM = 20_000
