// Everything a change must pass. Works on a fresh clone: installs the packages, and a browser where it may.
import { buildIfStale } from './build.mjs'
import { ensureBrowser } from './browser.mjs'
import { installMissing } from './install.mjs'
import { firstLoadRemark } from './scriptSize.mjs'
import { nodeProgram } from './nodeProgram.mjs'
import { runSteps, testStep } from './steps.mjs'
import { qualitySteps } from './qualitySteps.mjs'

installMissing()

const LIMIT_MINUTES = 30

const allWell = await runSteps(
  [
    { name: 'browser', run: ensureBrowser },
    ...qualitySteps(),
    {
      name: 'dependency boundaries',
      command: nodeProgram('dependency-cruiser', 'src', '--config', '.dependency-cruiser.cjs'),
    },
    { name: 'unused code', command: nodeProgram('knip') },
    testStep('unit tests', ['unit', 'ui']),
    { name: 'build', run: buildIfStale },
    { name: 'first-load script', run: firstLoadRemark },
    testStep('end-to-end tests', ['e2e']),
  ],
  LIMIT_MINUTES,
)
process.exit(allWell ? 0 : 1)
