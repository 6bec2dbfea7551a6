import { describe, expect, it } from 'vitest'
import { boatRing, finishedRing } from '../../src/core/layout'
import {
  attackBestPose,
  attackLargestShape,
  attackLargestTable,
  type CertificateLine,
  isViolated,
} from '../support/coverCertificates'

/** The campaign and the bench take 500 slabs; every run takes these. */
const SEEDS = Array.from({ length: 60 }, (_, k) => 7_000 + k)

function expectProofs(lines: readonly CertificateLine[]): void {
  expect(lines.filter(isViolated)).toEqual([])
  expect(lines.map(({ wrong }) => wrong).filter((wrong) => wrong !== null)).toEqual([])
  // A proof that anything passes is none: cut by one part in a hundred, it must be broken.
  const cut = lines.map((line) => ({ ...line, bound: line.bound * 0.99 }))
  expect(cut.some(isViolated)).toBe(true)
}

describe(`what the searches prove, on random slabs from seed ${SEEDS[0]}`, () => {
  it('LAY-14 no table of the width is longer than the bound', () => {
    expectProofs(SEEDS.map((seed) => attackLargestTable(seed, 40)))
  })

  it('LAY-12 no pose holds more wood than the bound', () => {
    expectProofs(SEEDS.map((seed) => attackBestPose(seed, 40)))
  })

  it('LAY-17 no similar shape is larger than the bound', () => {
    const outlines = [
      finishedRing({ kind: 'rounded', lengthMm: 1800, widthMm: 800, cornerRadiusMm: 120 }),
      finishedRing({ kind: 'oval', lengthMm: 1600, widthMm: 900 }),
      boatRing(2000, 900, 600),
    ]
    expectProofs(SEEDS.slice(0, 18).map((seed, k) => attackLargestShape(seed, outlines[k % 3] ?? [], 30)))
  })
})
