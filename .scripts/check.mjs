// The inner loop: types, lint, format and the tests that need no browser.
import { installMissing } from './install.mjs'

installMissing()
const { runSteps, testStep } = await import('./steps.mjs')
const { qualitySteps } = await import('./qualitySteps.mjs')
process.exit((await runSteps([...qualitySteps(), testStep('unit tests', ['unit', 'ui'])], 15)) ? 0 : 1)
