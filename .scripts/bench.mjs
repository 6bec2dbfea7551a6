// Times and sizes against tests/bench/budgets.json, on seeded data.
import { measure } from './measure.mjs'

measure('bench')
