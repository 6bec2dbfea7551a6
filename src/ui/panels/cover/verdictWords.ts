import { describeIssue, isWet, type SlabRow, type SlabVerdict } from '../../../core/plan'
import type { LengthDisplay } from '../../../core/units'
import { t } from '../../text/t'
import type { Format } from '../../text/useFormat'

const sure = (format: Format, mm: number, sdMm: number | null): string =>
  sdMm === null ? format.length(mm) : `${format.length(mm)} ${format.plusMinus(sdMm, 'length') ?? ''}`

function yardWords(verdict: Extract<SlabVerdict, { kind: 'yard' }>, format: Format): string {
  const { answer } = verdict
  switch (answer.kind) {
    case 'yes':
      return t('slabs-yard-yes', { spare: format.length(answer.spareMm) })
    case 'no':
      return t('slabs-yard-no', { short: format.length(answer.shortMm) })
    case 'measure':
      return t('slabs-yard-measure', {
        narrowest: format.length(answer.between[0]),
        widest: format.length(answer.between[1]),
      })
  }
}

type Serving = Extract<SlabVerdict, { kind: 'covers' | 'covers-kept' | 'needs-fill' }>
type Failing = Extract<SlabVerdict, { kind: 'too-small' | 'too-thin' }>

function servingWords(verdict: Serving, format: Format): string {
  switch (verdict.kind) {
    case 'covers':
      return t(verdict.voids > 0 ? 'slabs-covers-voids' : 'slabs-covers', {
        spare: sure(format, verdict.marginMm, verdict.sdMm),
        place: t(`slabs-at-${verdict.tightest ?? 'place'}`),
        voids: verdict.voids,
      })
    case 'covers-kept':
      return t('slabs-covers-kept', {
        least: format.length(verdict.leastWidthMm),
        mean: format.length(verdict.meanWidthMm),
      })
    case 'needs-fill':
      return t('slabs-needs-fill', {
        share: format.share(verdict.share),
        short: sure(format, verdict.shortMm, verdict.sdMm),
      })
  }
}

function failingWords(verdict: Failing, format: Format): string {
  if (verdict.kind === 'too-thin') {
    const { thicknessMm, sdMm } = verdict.finished
    return t('slabs-too-thin', { finished: sure(format, thicknessMm, sdMm) })
  }
  if (verdict.shortMm === null) return t('slabs-too-small')
  const short = format.length(verdict.shortMm)
  return verdict.share === null
    ? t('slabs-short-kept', { short })
    : t('slabs-short', { short, share: format.share(verdict.share) })
}

/** The answer of one slab in a sentence. */
export function slabVerdictText({ verdict }: SlabRow, format: Format, display: LengthDisplay): string {
  switch (verdict.kind) {
    case 'covers':
    case 'covers-kept':
    case 'needs-fill':
      return servingWords(verdict, format)
    case 'too-small':
    case 'too-thin':
      return failingWords(verdict, format)
    case 'yard':
      return yardWords(verdict, format)
    case 'searching':
      return t('slabs-searching')
    case 'needs-input':
      return verdict.issues.map((issue) => describeIssue(issue, display)).join(' ') || t('slabs-needs-input')
  }
}

const MARKS = {
  covers: 'done',
  'covers-kept': 'done',
  'needs-fill': 'doubtful',
  searching: 'doubtful',
  'needs-input': 'needs',
  'too-small': 'stop',
  'too-thin': 'stop',
} as const
const YARD_MARKS = { yes: 'done', measure: 'doubtful', no: 'stop' } as const

/** Whether it serves, in shape and colour. */
export function slabMark(row: SlabRow): 'done' | 'doubtful' | 'needs' | 'stop' {
  const { verdict, slab } = row
  if (slab.stock.rejected !== null) return 'stop'
  const mark = verdict.kind === 'yard' ? YARD_MARKS[verdict.answer.kind] : MARKS[verdict.kind]
  return mark === 'done' && isWet(row) ? 'doubtful' : mark
}

export const slabName = ({ slab }: SlabRow): string => `${slab.name} ${slab.tag}`.trim()

/** Why a slab that costs less is not the one to buy. */
export function cheaperWords(row: SlabRow, format: Format): string {
  const said = { name: slabName(row), cost: format.money(row.materialCents ?? 0) }
  if (isWet(row)) return t('slabs-cheaper-wet', said)
  if (row.verdict.kind === 'needs-fill')
    return t('slabs-cheaper-fill', { ...said, share: format.share(row.verdict.share) })
  return t('slabs-cheaper-open', said)
}
