// Import rules along whole paths; .oxlintrc.json and tests/arch hold the rules for single imports.
const { parts, core, corePackages } = require('./.scripts/folderOrder.json')

const test = '\\.test(-d)?\\.tsx?$'
const any = (names) => `(${names.join('|')})`
const inPackages = (names) => `(^|/)node_modules/${any(names)}/`

const laterParts = parts.slice(0, -1).map((part, place) => ({
  name: `${part}-never-reaches-later-parts`,
  comment: `${part} imports from ${any(parts.slice(0, place + 1))} only, also through other modules.`,
  severity: 'error',
  from: { path: `^src/${part}/`, pathNot: test },
  to: { path: `^src/${any(parts.slice(place + 1))}/`, reachable: true },
}))

const coreOrder = core.slice(0, -1).map((folder, place) => ({
  name: `core-${folder}-never-reaches-later-folders`,
  comment: `The order of the folders in core is ${core.join(' < ')}.`,
  severity: 'error',
  from: { path: `^src/core/${folder}/` },
  to: { path: `^src/core/${any(core.slice(place + 1))}/`, reachable: true },
}))

const corePackageRules = core.map((folder) => ({
  name: `core-${folder}-packages`,
  comment: 'Third-party code enters core in few named places.',
  severity: 'error',
  from: { path: `^src/core/${folder}/`, pathNot: test },
  to: {
    dependencyTypes: ['npm', 'npm-dev', 'npm-optional', 'npm-peer', 'npm-no-pkg', 'npm-unknown', 'core'],
    ...(corePackages[folder] ? { pathNot: inPackages(corePackages[folder]) } : {}),
  },
}))

module.exports = {
  forbidden: [
    ...laterParts,
    ...coreOrder,
    ...corePackageRules,
    {
      name: 'no-circles',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'nothing-unresolved',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
    {
      name: 'program-needs-no-test-package',
      severity: 'error',
      from: { path: '^src/', pathNot: `${test}` },
      to: { dependencyTypes: ['npm-dev'], dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'program-needs-no-test-file',
      severity: 'error',
      from: { path: '^src/', pathNot: test },
      to: { path: ['^tests/', test] },
    },
    {
      name: 'state-is-free-of-react',
      comment: 'Stores are tested in Node; their hooks live in ui.',
      severity: 'error',
      from: { path: '^src/(state|workers)/', pathNot: test },
      to: { path: inPackages(['react', 'react-dom', 'react-konva', 'konva']), reachable: true },
    },
  ],
  options: {
    // Types count as imports.
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'browser', 'default', 'types'],
      extensions: ['.ts', '.tsx', '.json', '.mjs', '.js', '.css'],
    },
  },
}
