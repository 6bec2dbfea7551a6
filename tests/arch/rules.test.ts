import { describe, expect, it } from 'vitest'
import { testNamesIn } from './testNames'
import { readTracked, trackedFiles } from './trackedFiles'

const RULE_ID = /^[-*|\s]*\**([A-Z]{2,5}-\d+)\b/gm
const ANY_ID = /\b[A-Z]{2,5}-\d+\b/g

const readmes = trackedFiles().filter((file) => /^src\/core\/[^/]+\/README\.md$/.test(file))
const testFiles = trackedFiles().filter((file) => /\.(test|e2e)\.tsx?$/.test(file))

const ruleIdsIn = (readme: string): readonly string[] =>
  [...readme.matchAll(RULE_ID)].map((match) => match[1] ?? '')

describe('the numbered rules of core', () => {
  const rules = readmes.flatMap((file) => ruleIdsIn(readTracked(file)).map((id) => ({ id, file })))
  const namedInTests = new Set(
    testFiles.flatMap((file) => testNamesIn(readTracked(file)).flatMap((name) => name.match(ANY_ID) ?? [])),
  )

  it('are found at all, and each id stands for one rule', () => {
    expect(rules.length).toBeGreaterThan(0)
    const ids = rules.map(({ id }) => id)
    expect(ids.filter((id, place) => ids.indexOf(id) !== place)).toEqual([])
  })

  it('each have a test that names them', () => {
    const untested = rules.filter(({ id }) => !namedInTests.has(id))
    expect(untested.map(({ id, file }) => `${id} of ${file}`)).toEqual([])
  })

  it('are read from lists and tables, and test names from every way of writing a test', () => {
    expect(
      ruleIdsIn('- CUT-1 One.\n- **RES-22** Two, see GEO-3.\n| LAY-3 | Three |\nText on FOR-1.'),
    ).toEqual(['CUT-1', 'RES-22', 'LAY-3'])
    expect(
      testNamesIn("describe('A-1', () => { it.each([1])('B-2 %i', () => f('C-3')); test(`D-4 ${x}`, g) })"),
    ).toEqual(["'A-1'", "'B-2 %i'", '`D-4 ${x}`'])
  })
})
