// Long searches for wrong answers, by random inputs: minutes to hours, so apart from `npm test`.
import { measure } from './measure.mjs'

measure('campaign')
