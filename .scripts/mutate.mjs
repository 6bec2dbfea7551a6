// Changes one thing at a time in a folder of the core and looks whether a test of that folder notices.
// node .scripts/mutate.mjs cuts             the whole folder; what did not change since the last run is remembered
// node .scripts/mutate.mjs cuts setOutCut   one file of it
// The report, with every survivor: reports/mutation/FOLDER.html
import { existsSync } from 'node:fs'
import { Stryker } from '@stryker-mutator/core'
import { inRoot } from './root.mjs'

const [, , folder = '', file = '**/*'] = process.argv
if (!/^[a-z]+$/.test(folder) || !existsSync(inRoot('src', 'core', folder))) {
  console.error('Name a folder of src/core, for example: node .scripts/mutate.mjs cuts')
  process.exit(1)
}
process.env['MUTATED_FOLDER'] = folder

const stryker = new Stryker({
  packageManager: 'npm',
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: 'tests/campaign/mutation.config.ts', related: false },
  mutate: [
    `src/core/${folder}/${file}.ts`,
    `!src/core/${folder}/**/*.test.ts`,
    `!src/core/${folder}/index.ts`,
  ],
  coverageAnalysis: 'perTest',
  // Texts for developers inside thrown errors are no behaviour of the program.
  mutator: { excludedMutations: ['StringLiteral'] },
  ignorePatterns: ['dist', 'reports', 'coverage', 'tests/photos', 'demo-data', 'public'],
  tempDirName: 'reports/mutation/work',
  incremental: true,
  incrementalFile: `reports/mutation/${folder}.incremental.json`,
  reporters: ['clear-text', 'html', 'json'],
  clearTextReporter: { allowColor: false, reportTests: false, logTests: false },
  htmlReporter: { fileName: `reports/mutation/${folder}.html` },
  jsonReporter: { fileName: `reports/mutation/${folder}.json` },
  concurrency: Number(process.env['MUTATION_CONCURRENCY'] ?? 2),
  timeoutMS: 60_000,
  allowEmpty: false,
})

const results = await stryker.runMutationTest()
const of = (/** @type {string[]} */ ...states) =>
  results.filter(({ status }) => states.includes(status)).length
const found = of('Killed', 'Timeout')
const all = found + of('Survived', 'NoCoverage')
console.log(
  JSON.stringify({
    folder,
    file,
    mutants: all,
    found,
    survived: all - found,
    score: Number((found / all).toFixed(4)),
  }),
)
