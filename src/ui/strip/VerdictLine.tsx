import type { Verdict } from '../../core/layout'
import { coverOdds, type OptionResult, type Part, verdictSentence } from '../../core/plan'
import { MarkIcon, StopIcon } from '../icons'
import { readyValue } from '../readyValue'
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

/** @param marginSdMm how sure the margin is; null when nothing is known of it */
const verdictText = (verdict: Verdict, format: Format, marginSdMm: number | null): string =>
  verdictSentence(
    verdict,
    {
      covers: (values) => t('verdict-covers', values),
      coversKept: () => t('verdict-covers-kept'),
      voidsInside: ({ voids }) => t('verdict-voids-inside', { voids }),
      needsFill: (values) => t('verdict-needs-fill', values),
      short: (values) => t('verdict-short', values),
      offSlab: () => t('verdict-off-slab'),
    },
    {
      ...format,
      margin: (mm) =>
        marginSdMm === null
          ? format.length(mm)
          : `${format.length(mm)} ${format.plusMinus(marginSdMm, 'length')}`,
      side: (side) => t(`side-${side}`),
    },
  )

/** Two standard deviations: what the screen calls ±. */
const DEVIATIONS = 2

/** A margin smaller than its own ± may well be none. */
const isNarrow = (verdict: Verdict, marginSdMm: number | null): boolean =>
  (verdict.kind === 'covers' || verdict.kind === 'covers-with-voids') &&
  verdict.spareMm !== null &&
  marginSdMm !== null &&
  verdict.spareMm < DEVIATIONS * marginSdMm

interface IconProps {
  readonly verdict: Verdict
  readonly marginSdMm: number | null
  readonly isDoubted: boolean
}

function VerdictIcon({ verdict, marginSdMm, isDoubted }: IconProps) {
  if (isBad(verdict.kind)) return <StopIcon />
  return <MarkIcon mark={isDoubted || isNarrow(verdict, marginSdMm) ? 'doubtful' : 'done'} />
}

const isBad = (kind: Verdict['kind']): boolean => kind === 'short' || kind === 'off-slab'

/** What is still missing for a verdict: the first stage that needs something. A slab's thickness can wait. */
function missingText(marks: StageMarks, hasPhoto: boolean): string {
  const stage = STAGE_NAMES.find(
    (name) => name !== 'slabs' && marks[name] === 'needs' && !(name === 'photo' && hasPhoto),
  )
  return stage === undefined ? t('verdict-none') : t(`verdict-missing-${stage}`)
}

/** How likely it covers; nothing where that cannot be said. */
function oddsText(option: OptionResult | undefined): string {
  const chance = readyValue(option?.accuracy)?.coverChance ?? null
  return chance === null ? '' : t('verdict-odds', { odds: coverOdds(chance) })
}

/** Covered or not, in words and with a sign. */
export function VerdictLine({ option, marks, hasPhoto, isDoubted }: Props) {
  const format = useFormat()
  const part: Part<Verdict> | undefined = option?.verdict
  const marginSdMm = readyValue(option?.accuracy)?.marginSdMm ?? null
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
      <VerdictIcon verdict={part.value} marginSdMm={marginSdMm} isDoubted={isDoubted} />
      {verdictText(part.value, format, marginSdMm)}
      {oddsText(option)}
    </p>
  )
}
