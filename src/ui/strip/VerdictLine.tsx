import type { Verdict } from '../../core/layout'
import type { OptionResult, Part } from '../../core/plan'
import { MarkIcon, StopIcon } from '../icons'
import { STAGE_NAMES } from '../stages/stageNames'
import type { StageMarks } from '../stages/stageMarks'
import { t } from '../text/t'
import { type Format, useFormat } from '../text/useFormat'

interface Props {
  readonly option: OptionResult | undefined
  readonly marks: StageMarks
  readonly hasPhoto: boolean
  /** The size is in doubt, or a piece lies on wood: the answer stands on sand. */
  readonly isDoubted: boolean
}

/** The verdict in words. */
export function verdictText(verdict: Verdict, format: Format): string {
  switch (verdict.kind) {
    case 'covers':
      return verdict.spareMm === null
        ? t('verdict-covers-kept')
        : t('verdict-covers', { spare: format.length(verdict.spareMm) })
    case 'covers-with-voids':
      return verdict.spareMm === null
        ? t('verdict-covers-kept-with-voids', { voids: verdict.voids })
        : t('verdict-covers-with-voids', { spare: format.length(verdict.spareMm), voids: verdict.voids })
    case 'needs-fill':
      return t('verdict-needs-fill', {
        resinShare: format.share(verdict.filledShare),
        side: t(`side-${verdict.worstSide}`),
        depth: format.length(verdict.depthMm),
      })
    case 'short':
      return t('verdict-short', {
        side: t(`side-${verdict.side}`),
        depth: format.length(verdict.depthMm),
        length: format.length(verdict.lengthMm),
      })
    case 'off-slab':
      return t('verdict-off-slab')
  }
}

const isBad = (kind: Verdict['kind']): boolean => kind === 'short' || kind === 'off-slab'

/** What is still missing for a verdict: the first stage that needs something. A slab's thickness can wait. */
function missingText(marks: StageMarks, hasPhoto: boolean): string {
  const stage = STAGE_NAMES.find((name) => marks[name] === 'needs' && !(name === 'photo' && hasPhoto))
  return stage === undefined ? t('verdict-none') : t(`verdict-missing-${stage}`)
}

/** Covered or not, in words and with a sign. */
export function VerdictLine({ option, marks, hasPhoto, isDoubted }: Props) {
  const format = useFormat()
  const part: Part<Verdict> | undefined = option?.verdict
  if (part === undefined || part.state === 'blocked') {
    return (
      <p className="verdict">
        <MarkIcon mark="needs" />
        {missingText(marks, hasPhoto)}
      </p>
    )
  }
  if (part.state === 'pending') return <p className="verdict">{t('verdict-pending')}</p>
  return (
    <p className="verdict" data-verdict={part.value.kind}>
      {isBad(part.value.kind) ? <StopIcon /> : <MarkIcon mark={isDoubted ? 'doubtful' : 'done'} />}
      {verdictText(part.value, format)}
    </p>
  )
}
