import { useMemo, useState } from 'react'
import { litresSaved } from '../../../core/layout'
import type { Isometry } from '../../../core/geometry'
import {
  bestPlaceTask,
  type CoverSubject,
  dryingOf,
  type Option,
  poseBeforeDrying,
  sizeOf,
} from '../../../core/plan'
import { degreesToRadians, radiansToDegrees } from '../../../core/units'
import { layFootprint, setCoverWishes } from '../../../state/commands'
import { run } from '../../../state/run'
import { sessionStore } from '../../../state/sessionStore'
import { ChoiceGroup } from '../../fields/ChoiceGroup'
import { OptionalNumberField } from '../../fields/OptionalNumberField'
import { readyValue } from '../../readyValue'
import { t } from '../../text/t'
import { useFormat } from '../../text/useFormat'
import { usePlanResult } from '../../usePlanResult'
import { PanelPart } from '../PanelPart'
import { MoreInputs } from '../pour/MoreInputs'
import { SearchLine } from './SearchLine'
import { useCover } from './useCover'

type Cover = Option['cover']

function Wishes({ option }: { readonly option: Option }) {
  const { cover } = option
  const set = (changes: Partial<Cover>) => run(setCoverWishes, { optionId: option.id, cover: changes })
  return (
    <MoreInputs title={t('cover-wishes')}>
      <ChoiceGroup<Cover['woodAt']>
        label={t('cover-wood-at')}
        value={cover.woodAt}
        onChange={(woodAt) => set({ woodAt })}
        options={[
          { value: 'anywhere', label: t('cover-wood-anywhere') },
          { value: 'long-edges', label: t('cover-wood-long-edges') },
          { value: 'ends', label: t('cover-wood-ends') },
        ]}
      />
      <ChoiceGroup<Cover['voids']>
        label={t('cover-voids')}
        value={cover.voids}
        onChange={(voids) => set({ voids })}
        options={[
          { value: 'welcome', label: t('cover-voids-welcome') },
          { value: 'as-gaps', label: t('cover-voids-as-gaps') },
          { value: 'unwelcome', label: t('cover-voids-unwelcome') },
        ]}
      />
      <OptionalNumberField
        label={t('cover-grain')}
        hint={t('cover-grain-hint')}
        placeholder={t('cover-grain-any')}
        value={
          cover.grainWithinRad === null ? null : Math.round(radiansToDegrees(cover.grainWithinRad) * 10) / 10
        }
        limits={{ least: 0, greatest: 90 }}
        suffix="°"
        onChange={(degrees) => set({ grainWithinRad: degrees === null ? null : degreesToRadians(degrees) })}
      />
    </MoreInputs>
  )
}

/** Nearer than this is the best place itself: a tenth of a square decimetre. */
const SAME_MM2 = 1000

interface CostProps {
  readonly option: Option
  readonly bestMm2: number
  readonly onBack: () => void
}

/** What it costs to lie elsewhere, and the way back. */
function Cost({ option, bestMm2, onBack }: CostProps) {
  const format = useFormat()
  const result = usePlanResult().options.get(option.id)
  const coverage = readyValue(result?.coverage)
  if (coverage === null) return null
  const lessMm2 = bestMm2 - coverage.mainInFinishedMm2
  if (Math.abs(lessMm2) < SAME_MM2) return <p role="status">{t('cover-is-best')}</p>
  const litres = litresSaved(lessMm2, readyValue(result?.resin)?.castThicknessMm ?? 0)
  return (
    <>
      <p role="status">
        {lessMm2 > 0
          ? t('cover-costs', { wood: format.area(lessMm2), resin: format.volume(litres) })
          : t('cover-against-wishes', { wood: format.area(-lessMm2) })}
      </p>
      <div className="button-row">
        <button type="button" className="button" onClick={onBack}>
          {t('cover-bring-back')}
        </button>
      </div>
    </>
  )
}

/** Where the table lies best on the slab, by the maker's wishes. */
export function BestPlacePart({
  option,
  subject,
}: {
  readonly option: Option
  readonly subject: CoverSubject
}) {
  const format = useFormat()
  const [isAsked, setAsked] = useState(false)
  const task = useMemo(() => (isAsked ? bestPlaceTask(subject) : null), [isAsked, subject])
  const found = useCover<'bestPose'>(task)
  const best = found?.state?.incumbent ?? null
  const slabId = subject.slab.id
  const lay = (pose: Isometry) => {
    const { lengthMm, widthMm } = sizeOf(option.table.outline)
    const loss = dryingOf(subject.slab).lossFraction
    run(layFootprint, {
      optionId: option.id,
      slabId,
      pose: poseBeforeDrying(pose, loss, [lengthMm / 2, widthMm / 2]),
    })
    sessionStore.setState({ view: 'above', selection: { kind: 'footprint' } })
  }
  const isLaid = option.footprint?.slabId === slabId
  return (
    <PanelPart title={t('cover-best')} note={t('cover-best-note')}>
      {!isAsked && (
        <div className="button-row">
          <button type="button" className="button button-main" onClick={() => setAsked(true)}>
            {t('cover-find-best')}
          </button>
        </div>
      )}
      <SearchLine found={found} />
      {best !== null && (
        <>
          <p>
            {t('cover-best-found', { share: format.share(best.woodShare), wood: format.area(best.woodMm2) })}
          </p>
          {isLaid ? (
            <Cost option={option} bestMm2={best.woodMm2} onBack={() => lay(best.pose)} />
          ) : (
            <div className="button-row">
              <button type="button" className="button button-main" onClick={() => lay(best.pose)}>
                {t('cover-lay-best')}
              </button>
            </div>
          )}
        </>
      )}
      <Wishes option={option} />
    </PanelPart>
  )
}
