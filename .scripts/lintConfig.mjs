// Writes .oxlintrc.json. The import rules follow from the folder order, which stands in folderOrder.json alone.
import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { format } from 'prettier'
import { inRoot } from './root.mjs'

/** @type {{ parts: string[], core: string[] }} */
const order = JSON.parse(readFileSync(inRoot('.scripts', 'folderOrder.json'), 'utf8'))

/** @typedef {{ regex: string, message: string }} ImportPattern */

/**
 * Imports of these folders' index and of files in them, from at least so many folders further down.
 * @param {string[]} folders
 * @param {number} depth
 */
const reaching = (folders, depth) => `^(?:\\.\\./){${depth},}(?:${folders.join('|')})(?:/|$)`

/** @param {string[]} folders */
const reachingInside = (folders) => `^(?:\\.\\./)+(?:${folders.join('|')})/.`

/** @type {ImportPattern} */
const insidesOfCore = {
  regex: '/core/[^/]+/.',
  message: "Import a core folder's index, not a file inside it.",
}

/** @param {ImportPattern[]} patterns */
const restrictImports = (patterns) => ({ 'no-restricted-imports': ['error', { patterns }] })

/** @param {string} folder */
const coreFolderOverride = (folder) => {
  const place = order.core.indexOf(folder)
  const others = order.core.filter((other) => other !== folder)
  const later = order.core.slice(place + 1)
  const patterns = [
    { regex: reaching(order.parts.slice(1), 2), message: 'core imports nothing of workers, state or ui.' },
    { regex: reachingInside(others), message: insidesOfCore.message },
    ...(later.length > 0
      ? [{ regex: reaching(later, 1), message: `core/${folder} comes before these folders.` }]
      : []),
  ]
  return { files: [`src/core/${folder}/**`], rules: restrictImports(patterns) }
}

/** @param {string} part */
const partOverride = (part) => {
  const later = order.parts.slice(order.parts.indexOf(part) + 1)
  const patterns = [
    ...(later.length > 0
      ? [{ regex: reaching(later, 1), message: `${part} does not import from ${later.join(' or ')}.` }]
      : []),
    insidesOfCore,
  ]
  return { files: [`src/${part}/**`], rules: restrictImports(patterns) }
}

const impureNames = [
  'Date performance crypto setTimeout setInterval requestAnimationFrame',
  'window document navigator location self globalThis console process',
  'localStorage sessionStorage indexedDB caches fetch XMLHttpRequest WebSocket',
  'Worker Image ImageData OffscreenCanvas createImageBitmap Blob File FileReader',
].flatMap((names) => names.split(' '))

const pureCore = {
  files: ['src/core/**'],
  rules: {
    'no-restricted-globals': [
      'error',
      ...impureNames.map((name) => ({ name, message: 'core is pure: take it as an argument.' })),
    ],
    'no-restricted-properties': [
      'error',
      { object: 'Math', property: 'random', message: 'core is repeatable: take a seed as an argument.' },
    ],
  },
}

const config = {
  $schema: './node_modules/oxlint/configuration_schema.json',
  plugins: ['typescript', 'unicorn', 'oxc', 'react', 'jsx-a11y', 'import', 'vitest'],
  categories: { correctness: 'error' },
  options: { typeAware: true, reportUnusedDisableDirectives: 'error' },
  ignorePatterns: ['dist', 'reports', 'coverage', 'tests/arch/fixtures'],
  rules: {
    'typescript/no-explicit-any': 'error',
    'typescript/no-non-null-assertion': 'error',
    'typescript/ban-ts-comment': [
      'error',
      { 'ts-expect-error': true, 'ts-ignore': true, 'ts-nocheck': true },
    ],
    'typescript/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
    'typescript/no-floating-promises': 'error',
    'typescript/no-misused-promises': 'error',
    'typescript/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
    'eslint/complexity': ['error', { max: 10 }],
    'eslint/max-lines': ['error', { max: 300 }],
    'eslint/eqeqeq': 'error',
    'eslint/no-var': 'error',
    'eslint/prefer-const': 'error',
    'eslint/no-warning-comments': [
      'error',
      { terms: ['todo', 'fixme', 'xxx', 'hack'], location: 'anywhere' },
    ],
    'react/rules-of-hooks': 'error',
    'react/exhaustive-deps': 'error',
    'import/no-cycle': 'error',
    // Text here is ours, and its letters are single code points.
    'typescript/no-misused-spread': 'off',
    // An SVG or canvas part cannot be the tag that a role stands for.
    'jsx-a11y/prefer-tag-over-role': 'off',
    // A canvas that is worked by keys is an application that takes the focus.
    'jsx-a11y/no-noninteractive-tabindex': ['error', { roles: ['tabpanel', 'application'] }],
  },
  overrides: [
    { files: ['src/**'], rules: { 'eslint/no-console': 'error' } },
    ...order.parts.slice(1).map(partOverride),
    ...order.core.map(coreFolderOverride),
    pureCore,
    {
      // A test reads a fixture or a clock where the program must not, and lists cases at length.
      files: ['**/*.test.ts', '**/*.test.tsx', 'tests/**'],
      rules: {
        'typescript/no-non-null-assertion': 'off',
        'eslint/max-lines': 'off',
        'eslint/complexity': 'off',
        'eslint/no-console': 'off',
        'no-restricted-globals': 'off',
        'react/rules-of-hooks': 'off',
        'vitest/no-conditional-expect': 'off',
        'vitest/require-mock-type-parameters': 'off',
        'vitest/expect-expect': ['error', { assertFunctionNames: ['expect*', 'fc.assert', 'check*'] }],
        'vitest/no-standalone-expect': ['error', { additionalTestBlockFunctions: ['appTest'] }],
      },
    },
    { files: ['**/*.test-d.ts'], rules: { 'typescript/ban-ts-comment': 'off' } },
  ],
}

export const lintConfigText = () => format(JSON.stringify(config), { parser: 'json', printWidth: 110 })

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(inRoot('.oxlintrc.json'), await lintConfigText())
}
