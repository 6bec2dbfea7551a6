import { describe, expect, it } from 'vitest'
import { describeIssue } from './describeIssue'
import { ISSUE_CODES, type IssueCode, issueOf } from './issue'
import { issueTexts } from './text/en/issues'

const VALUES = {
  tapedMm: 1805,
  solvedMm: 1780,
  thicknessMm: 45,
  slabThicknessMm: 48,
  leftMm: 3,
  depthMm: 90,
  areaMm2: 25_000,
  lengthMm: 2400,
  widthMm: 1000,
  slabLengthMm: 900,
  slabWidthMm: 300,
  alongMm: 300,
  castThicknessMm: 60,
  cornerRadiusMm: 700,
  greatestMm: 400,
  markNames: 'A, B',
  distanceNames: 'A–C',
  pieceName: 'B',
  otherName: 'C',
  traceName: 'V1',
  cutName: '2',
  count: 3,
  needed: 5,
  given: 4,
  share: 0.2,
  limitFraction: 0.12,
  cutBackMm: 12,
  leftAreaMm2: 900_000,
  outsideFraction: 0.4,
  tiltRad: 1.2,
  edgeA: 3,
  edgeB: 9,
  photoName: 'cleaned.jpg',
  marks: 2,
  offMm: 12,
} as const

describe('describeIssue', () => {
  const codes = Object.keys(issueTexts) as IssueCode[]

  it('PLN-4 has a sentence for every code', () => {
    expect(codes).toEqual(expect.arrayContaining([...ISSUE_CODES]))
  })

  it.each(codes)('PLN-4 says what is wrong and what to do: %s', (code) => {
    const sentence = describeIssue(issueOf(code, 'warning', [], VALUES), { system: 'mm' })
    expect(sentence).toMatch(/^[A-Z].*[.]$/)
    expect(sentence).not.toMatch(/undefined|NaN|\{|\}|\? mm/)
    expect(sentence.length).toBeGreaterThan(20)
    expect(sentence.length).toBeLessThan(260)
  })

  it('PLN-4 speaks in the maker’s units', () => {
    const issue = issueOf('distance-disagrees', 'warning', [], VALUES)
    expect(describeIssue(issue, { system: 'mm' })).toContain('taped 1805 mm')
    expect(describeIssue(issue, { system: 'inch', fraction: 16 })).toContain('taped 5′ 11 1/16″')
  })
})
