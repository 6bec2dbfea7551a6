import { useMemo, useState } from 'react'
import type { FrontierPoint } from '../../../core/layout'
import {
  type CoverSubject,
  dryingOf,
  frontierTask,
  growthTask,
  keptSides,
  keptTask,
  largestTask,
  type Option,
  poseBeforeDrying,
  sizeOf,
} from '../../../core/plan'
import { setCoverWishes, takeTable } from '../../../state/commands'
import { run } from '../../../state/run'
import { PercentField } from '../../fields/PercentField'
import { RangeField } from '../../fields/RangeField'
import { t } from '../../text/t'
import { useFormat } from '../../text/useFormat'
import { PanelPart } from '../PanelPart'
import { FrontierChart } from './FrontierChart'
import { SearchLine } from './SearchLine'
import { useCover } from './useCover'

interface Props {
  readonly option: Option
  readonly subject: CoverSubject
}

/** A found size is taken a little smaller, in whole millimetres: the search may lie over the edge by a hair. */
const whole = (mm: number): number => Math.floor(mm)

function take({ option, subject }: Props, { lengthMm, widthMm, pose }: FrontierPoint): void {
  if (pose === null) return
  const size = { lengthMm: whole(lengthMm), widthMm: whole(widthMm) }
  const loss = dryingOf(subject.slab).lossFraction
  run(takeTable, {
    optionId: option.id,
    slabId: subject.slab.id,
    outline: { kind: 'rectangle', ...size },
    pose: poseBeforeDrying(pose, loss, [lengthMm / 2, widthMm / 2]),
  })
}

/** "The client's 2400 × 1000 could be 2640 at that width." */
function ClientLine({ option, subject }: Props) {
  const format = useFormat()
  const task = useMemo(() => largestTask(subject, 0), [subject])
  const found = useCover<'largestTable'>(task)
  const { lengthMm, widthMm } = sizeOf(option.table.outline)
  const most = found?.state?.incumbent?.lengthMm ?? null
  const size = { length: format.length(lengthMm), width: format.length(widthMm) }
  if (most === null) return found?.status === 'done' ? <p>{t('cover-client-none', size)}</p> : null
  return (
    <p className="cover-sentence">{t('cover-client-could', { ...size, most: format.length(whole(most)) })}</p>
  )
}

function KeptLine({ subject, keep }: { readonly subject: CoverSubject; readonly keep: 'both' | 'one' }) {
  const format = useFormat()
  const task = useMemo(() => keptTask(subject, keep), [subject, keep])
  const found = useCover<'keptTable'>(task)
  const kept = found?.state?.incumbent ?? null
  return (
    <>
      <SearchLine found={found} />
      {kept !== null && (
        <p className="cover-sentence">
          {t('cover-kept', {
            length: format.length(whole(kept.lengthMm)),
            least: format.length(kept.leastWidthMm),
            mean: format.length(kept.meanWidthMm),
          })}
        </p>
      )}
      {kept === null && found?.status === 'done' && <p>{t('cover-kept-none')}</p>}
    </>
  )
}

/** The largest top of the same shape, for outlines that are no rectangle. */
function GrowthLine({ option, subject }: Props) {
  const format = useFormat()
  const task = useMemo(() => growthTask(subject), [subject])
  const found = useCover<'largestShape'>(task)
  const largest = found?.state?.incumbent ?? null
  const { outline } = option.table
  const size = sizeOf(outline)
  const grown = (mm: number): number => whole(mm * (largest?.growth ?? 1))
  const onTake = () => {
    if (largest === null || outline.kind === 'free') return
    const loss = dryingOf(subject.slab).lossFraction
    const lengths = { lengthMm: grown(size.lengthMm), widthMm: grown(size.widthMm) }
    const pose = poseBeforeDrying(largest.pose, loss, [lengths.lengthMm / 2, lengths.widthMm / 2])
    run(takeTable, {
      optionId: option.id,
      slabId: subject.slab.id,
      outline: { ...outline, ...lengths },
      pose,
    })
  }
  return (
    <>
      <SearchLine found={found} />
      {largest !== null && (
        <>
          <p className="cover-sentence">
            {t('cover-growth', {
              length: format.length(grown(size.lengthMm)),
              width: format.length(grown(size.widthMm)),
            })}
          </p>
          {outline.kind !== 'free' && (
            <div className="button-row">
              <button type="button" className="button" onClick={onTake}>
                {t('cover-take')}
              </button>
            </div>
          )}
        </>
      )}
    </>
  )
}

interface PickProps extends Props {
  readonly points: readonly FrontierPoint[]
  readonly chosen: FrontierPoint | null
  readonly onChoose: (point: FrontierPoint | null) => void
}

/** Steps along the curve by finger or arrow keys, and takes the size. */
function PickSize({ points, chosen, onChoose, ...props }: PickProps) {
  const format = useFormat()
  const sizeText = (p: FrontierPoint) =>
    `${format.length(whole(p.lengthMm))} × ${format.length(whole(p.widthMm))}`
  const place = points.findIndex((p) => p.widthMm === chosen?.widthMm && p.lengthMm === chosen.lengthMm)
  return (
    <>
      <RangeField
        label={t('cover-pick')}
        text={chosen === null ? t('cover-pick-none') : sizeText(chosen)}
        value={Math.max(0, place)}
        least={0}
        greatest={points.length - 1}
        step={1}
        onMove={(index) => onChoose(points[index] ?? null)}
        onSettle={() => undefined}
      />
      <div className="button-row">
        <button
          type="button"
          className="button button-main"
          disabled={chosen === null}
          onClick={() => chosen !== null && take(props, chosen)}
        >
          {t('cover-take')}
        </button>
      </div>
    </>
  )
}

function Curve({ option, subject }: Props) {
  const share = option.cover.mostResinShare
  const woodTask = useMemo(() => frontierTask(subject, 0), [subject])
  const resinTask = useMemo(() => (share > 0 ? frontierTask(subject, share) : null), [subject, share])
  const wood = useCover<'frontier'>(woodTask)
  const resin = useCover<'frontier'>(resinTask)
  const [chosen, setChosen] = useState<FrontierPoint | null>(null)
  const lines = { wood: wood?.state?.incumbent ?? [], resin: resin?.state?.incumbent ?? [] }
  const points = [...lines.wood, ...lines.resin].filter(({ pose }) => pose !== null)
  const client = sizeOf(option.table.outline)
  return (
    <>
      <SearchLine found={wood} />
      <SearchLine found={resin} />
      {points.length > 0 && (
        <>
          <FrontierChart {...lines} client={client} chosen={chosen} onChoose={setChosen} />
          <PickSize option={option} subject={subject} points={points} chosen={chosen} onChoose={setChosen} />
        </>
      )}
    </>
  )
}

/** How big the table could go on this slab. */
export function LargestPart({ option, subject }: Props) {
  const [isAsked, setAsked] = useState(false)
  const keep = keptSides(option)
  const isRectangle = option.table.outline.kind === 'rectangle'
  return (
    <PanelPart title={t('cover-largest')} note={t('cover-largest-note')}>
      {keep === null && isRectangle && <ClientLine option={option} subject={subject} />}
      {keep === null && !isRectangle && <GrowthLine option={option} subject={subject} />}
      {keep !== null && <KeptLine subject={subject} keep={keep} />}
      <PercentField
        label={t('cover-most-resin')}
        fraction={option.cover.mostResinShare}
        onChange={(share) =>
          run(setCoverWishes, { optionId: option.id, cover: { mostResinShare: Math.min(0.9, share) } })
        }
      />
      {isAsked ? (
        <Curve option={option} subject={subject} />
      ) : (
        <div className="button-row">
          <button type="button" className="button" onClick={() => setAsked(true)}>
            {t('cover-show-curve')}
          </button>
        </div>
      )}
    </PanelPart>
  )
}
