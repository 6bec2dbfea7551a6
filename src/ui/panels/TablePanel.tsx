import { lazy, Suspense } from 'react'
import { ringCentroid } from '../../core/geometry'
import { startingPose } from '../../core/layout'
import {
  GREATEST_LENGTH_MM,
  type Option,
  type OptionResult,
  type Slab,
  type SlabResult,
} from '../../core/plan'
import { layFootprint, liftFootprint, setTableOutline, setTableThickness } from '../../state/commands'
import { run } from '../../state/run'
import { sessionStore } from '../../state/sessionStore'
import { ChoiceGroup } from '../fields/ChoiceGroup'
import { LengthField } from '../fields/LengthField'
import { t, withTexts } from '../text/t'
import { useOption, useSlab } from '../useActive'
import { usePlanResult } from '../usePlanResult'
import { CoverPart } from './CoverPart'
import { PanelPart } from './PanelPart'
import { PoseFields } from './PoseFields'
import { TableSidesPart } from './TableSidesPart'

const CoverTools = lazy(async () => {
  const { CoverTools: loaded } = await withTexts(import('./cover/CoverTools'), import('../text/coverTexts'))
  return { default: loaded }
})

type Outline = Option['table']['outline']
type SizedOutline = Exclude<Outline, { kind: 'free' }>

const SIDE_LIMITS = { leastMm: 100, greatestMm: GREATEST_LENGTH_MM }
const THICKNESS_LIMITS = { leastMm: 5, greatestMm: 500 }
/** Comfortable to the hip of one who walks past. Common practice, no source. */
const STARTING_RADIUS_MM = 60

function outlineOfKind(kind: SizedOutline['kind'], { lengthMm, widthMm }: SizedOutline): SizedOutline {
  if (kind !== 'rounded') return { kind, lengthMm, widthMm }
  return { kind, lengthMm, widthMm, cornerRadiusMm: Math.min(STARTING_RADIUS_MM, lengthMm / 2, widthMm / 2) }
}

function OutlineFields({ option, outline }: { readonly option: Option; readonly outline: SizedOutline }) {
  const set = (changed: SizedOutline) => run(setTableOutline, { optionId: option.id, outline: changed })
  return (
    <>
      <div className="field-grid">
        <LengthField
          label={t('table-length')}
          valueMm={outline.lengthMm}
          limits={SIDE_LIMITS}
          onChange={(lengthMm) => set({ ...outline, lengthMm })}
        />
        <LengthField
          label={t('table-width')}
          valueMm={outline.widthMm}
          limits={SIDE_LIMITS}
          onChange={(widthMm) => set({ ...outline, widthMm })}
        />
        <LengthField
          label={t('table-thickness')}
          hint={t('table-thickness-hint')}
          valueMm={option.table.thicknessMm}
          limits={THICKNESS_LIMITS}
          onChange={(thicknessMm) => run(setTableThickness, { optionId: option.id, thicknessMm })}
        />
      </div>
      <ChoiceGroup<SizedOutline['kind']>
        label={t('table-shape')}
        value={outline.kind}
        onChange={(kind) => set(outlineOfKind(kind, outline))}
        options={[
          { value: 'rectangle', label: t('table-shape-rectangle') },
          { value: 'rounded', label: t('table-shape-rounded') },
          { value: 'oval', label: t('table-shape-oval') },
        ]}
      />
      {outline.kind === 'rounded' && (
        <LengthField
          label={t('table-corner-radius')}
          valueMm={outline.cornerRadiusMm}
          limits={{ leastMm: 1, greatestMm: Math.min(outline.lengthMm, outline.widthMm) / 2 }}
          onChange={(cornerRadiusMm) => set({ ...outline, cornerRadiusMm })}
        />
      )}
    </>
  )
}

interface PlaceProps {
  readonly option: Option
  readonly slab: Slab | null
  readonly slabResult: SlabResult | undefined
  readonly optionResult: OptionResult | undefined
}

function LayButton({ option, slab, slabResult }: PlaceProps) {
  const shape = slabResult?.shape.state === 'ready' ? slabResult.shape.value : null
  const lay = () => {
    if (slab === null || shape === null) return
    const pose = startingPose(shape.outline, option.table.outline)
    run(layFootprint, { optionId: option.id, slabId: slab.id, pose })
    sessionStore.setState({ view: 'above', selection: { kind: 'footprint' } })
  }
  return (
    <>
      <button type="button" className="button button-main" disabled={shape === null} onClick={lay}>
        {t('table-lay')}
      </button>
      {shape === null && <p className="note">{t('table-lay-needs-outline')}</p>}
    </>
  )
}

function PlacePart(props: PlaceProps) {
  const { option, optionResult } = props
  const { footprint } = option
  const laid = optionResult?.footprint.state === 'ready' ? optionResult.footprint.value : null
  return (
    <PanelPart
      title={t('table-place')}
      note={footprint === null ? t('table-place-how') : t('table-place-note')}
    >
      {footprint === null ? (
        <LayButton {...props} />
      ) : (
        <>
          <PoseFields
            pose={footprint.pose}
            at={[footprint.pose.xMm, footprint.pose.yMm]}
            middle={
              laid === null ? [footprint.pose.xMm, footprint.pose.yMm] : ringCentroid(laid.finishedOnSlab)
            }
            xLabel={t('table-corner-along')}
            yLabel={t('table-corner-off')}
            onChange={(pose) => run(layFootprint, { optionId: option.id, slabId: footprint.slabId, pose })}
          />
          <div className="button-row">
            <button
              type="button"
              className="button"
              onClick={() => run(liftFootprint, { optionId: option.id })}
            >
              {t('table-lift')}
            </button>
          </div>
        </>
      )}
    </PanelPart>
  )
}

/** The table: its size and sides, and where it lies on the slab. */
export function TablePanel() {
  const slab = useSlab()
  const option = useOption()
  const result = usePlanResult()
  if (option === null) return null
  const { outline } = option.table
  const optionResult = result.options.get(option.id)
  return (
    <>
      <PanelPart title={t('table-size')}>
        {outline.kind === 'free' ? (
          <p>{t('table-shape-free')}</p>
        ) : (
          <OutlineFields option={option} outline={outline} />
        )}
      </PanelPart>
      <PlacePart
        option={option}
        slab={slab}
        slabResult={result.slabs.get(slab?.id ?? '')}
        optionResult={optionResult}
      />
      <Suspense fallback={null}>
        <CoverTools option={option} slab={slab} />
      </Suspense>
      <CoverPart result={optionResult} />
      <TableSidesPart option={option} />
    </>
  )
}
