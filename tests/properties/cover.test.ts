import { describe, expect, it } from 'vitest'
import { boatRing, finishedRing } from '../../src/core/layout'
import {
  attackBestPose,
  attackLargestShape,
  attackLargestTable,
  attackResinTable,
  type CertificateLine,
  isViolated,
} from '../support/coverCertificates'

/** The bench takes as many as it is asked for; every run takes these. */
const SEEDS = Array.from({ length: 60 }, (_, k) => 7_000 + k)

/** Most of it is the attack, in plain code; a busy machine takes its time. */
const TIMEOUT_MS = 180_000

function expectProofs(lines: readonly CertificateLine[]): void {
  expect(lines.filter(isViolated)).toEqual([])
  expect(lines.map(({ wrong }) => wrong).filter((wrong) => wrong !== null)).toEqual([])
  // A proof that anything passes is none: cut by a tenth, it must be broken.
  const cut = lines.map((line) => ({ ...line, bound: line.bound * 0.9 }))
  expect(cut.some(isViolated)).toBe(true)
}

describe(`what the searches prove, on random slabs from seed ${SEEDS[0]}`, () => {
  it('LAY-14 no table of the width is longer than the bound', { timeout: TIMEOUT_MS }, () => {
    expectProofs(SEEDS.map((seed) => attackLargestTable(seed, 30)))
  })

  it('LAY-15 no table with so much resin is longer than the bound', { timeout: TIMEOUT_MS }, () => {
    expectProofs(SEEDS.slice(0, 15).map((seed) => attackResinTable(seed, 2_500)))
  })

  it('LAY-12 no pose holds more wood than the bound', { timeout: TIMEOUT_MS }, () => {
    expectProofs(SEEDS.map((seed) => attackBestPose(seed, 30)))
  })

  it('LAY-17 no similar shape is larger than the bound', { timeout: TIMEOUT_MS }, () => {
    const outlines = [
      finishedRing({ kind: 'rounded', lengthMm: 1800, widthMm: 800, cornerRadiusMm: 120 }),
      finishedRing({ kind: 'oval', lengthMm: 1600, widthMm: 900 }),
      boatRing(2000, 900, 600),
    ]
    expectProofs(SEEDS.slice(0, 15).map((seed, k) => attackLargestShape(seed, outlines[k % 3] ?? [], 15)))
  })
})
