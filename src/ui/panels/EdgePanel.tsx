import { ringPerimeterMm } from '../../core/geometry'
import type { Photo, Slab, SlabResult, Trace } from '../../core/plan'
import { removeTrace, setTraceMeaning } from '../../state/commands'
import { run } from '../../state/run'
import { ActionButton } from '../actions/ActionButton'
import { traceLabel } from '../canvas'
import { LengthField } from '../fields/LengthField'
import { placeName } from '../stages/goToStage'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'
import { useSlab } from '../useActive'
import { readyValue } from '../readyValue'
import { usePlanResult } from '../usePlanResult'
import { Figures } from './Figures'
import { FindEdgePart } from './FindEdgePart'
import { FindVoidsPart } from './FindVoidsPart'
import { LeanPart } from './LeanPart'
import { MendPart } from './MendPart'
import { NoPhotoYet } from './NoPhotoYet'
import { PanelPart } from './PanelPart'
import { PhotoChoice } from './LaterPhotos'
import { scaleOn, tracesOf, usePhotoOf } from './photoOf'
import { PointList } from './PointList'
import { StationsPart } from './StationsPart'
import { useIssueAt } from './useIssues'
import { VoidCard } from './VoidCard'

/** More than any slab's edge has of decayed wood that is worth keeping. Common practice, no source. */
const GREATEST_CUT_BACK_MM = 300

interface Props {
  readonly slab: Slab
  readonly result: SlabResult | undefined
}

function OutlineFigures({ result }: Pick<Props, 'result'>) {
  const format = useFormat()
  if (result?.shape.state !== 'ready') return null
  const shape = result.shape.value
  const sure = readyValue(result.accuracy)
  const lengthSure = (sdMm: number | undefined) => format.plusMinus(sdMm, 'length')
  const areaSure = (sdMm2: number | undefined) => format.plusMinus(sdMm2, 'area')
  return (
    <Figures
      rows={[
        {
          name: t('edge-length'),
          figure: format.length(shape.lengthMm),
          plusMinus: lengthSure(sure?.lengthSdMm),
        },
        {
          name: t('edge-width'),
          figure: format.length(shape.widthMm),
          plusMinus: lengthSure(sure?.widthSdMm),
        },
        { name: t('edge-round'), figure: format.length(ringPerimeterMm(shape.outline)) },
        {
          name: t('edge-gross-area'),
          figure: format.area(shape.grossAreaMm2),
          plusMinus: areaSure(sure?.grossAreaSdMm2),
        },
        {
          name: t('edge-wood-area'),
          figure: format.area(shape.woodAreaMm2),
          plusMinus: areaSure(sure?.woodAreaSdMm2),
          isTotal: true,
        },
      ]}
    />
  )
}

/** Decayed wood that is cut back all along the edge. */
function CutBackField({ slab, outline }: Pick<Props, 'slab'> & { readonly outline: Trace }) {
  const issueAt = useIssueAt()
  if (outline.meaning.kind !== 'outline') return null
  return (
    <LengthField
      label={t('edge-cut-back')}
      hint={t('edge-cut-back-hint')}
      valueMm={outline.meaning.cutBackMm ?? 0}
      limits={{ leastMm: 0, greatestMm: GREATEST_CUT_BACK_MM }}
      issue={issueAt('slabs', slab.id, 'traces', outline.id)}
      onChange={(cutBackMm) =>
        run(setTraceMeaning, {
          slabId: slab.id,
          traceId: outline.id,
          meaning: { kind: 'outline', ...(cutBackMm === 0 ? {} : { cutBackMm }) },
        })
      }
    />
  )
}

function OutlinePart({ slab, result, outline }: Props & { readonly outline: Trace }) {
  const scale = scaleOn(result, outline.photoId)
  return (
    <PanelPart title={t('edge-outline')} note={t('edge-outline-edit')}>
      <OutlineFigures result={result} />
      <CutBackField slab={slab} outline={outline} />
      <div className="button-row" data-place={placeName('traces', outline.id)}>
        <ActionButton id="tool-outline" label={t('edge-edit-outline')} />
        <button
          type="button"
          className="button"
          onClick={() => run(removeTrace, { slabId: slab.id, traceId: outline.id })}
        >
          {t('edge-remove-outline')}
        </button>
      </div>
      {scale !== null && <PointList slabId={slab.id} trace={outline} scale={scale} />}
    </PanelPart>
  )
}

interface VoidsProps extends Props {
  readonly traces: readonly Trace[]
  readonly photo: Photo
  readonly outline: Trace | undefined
}

function VoidsPart({ slab, result, traces, photo, outline }: VoidsProps) {
  const within = traces.flatMap((trace) =>
    trace.meaning.kind === 'outline' ? [] : [{ trace, meaning: trace.meaning }],
  )
  return (
    <PanelPart title={t('edge-voids')} note={t('edge-voids-note')}>
      <div className="button-row">
        <ActionButton id="tool-void" label={t('edge-start-void')} />
      </div>
      {outline !== undefined && <FindVoidsPart photo={photo} />}
      <ul className="cards">
        {within.map(({ trace, meaning }) => (
          <VoidCard
            key={trace.id}
            slab={slab}
            trace={trace}
            meaning={meaning}
            name={traceLabel(traces, trace)}
            result={result}
          />
        ))}
      </ul>
    </PanelPart>
  )
}

interface TapedProps extends Props {
  readonly stations: Extract<Slab['capture'], { kind: 'stations' }>['stations']
}

/** Without a photo the edge comes from the tape; voids are then not known to the program. */
function TapedOutline({ slab, stations, result }: TapedProps) {
  return (
    <>
      <StationsPart slabId={slab.id} stations={stations} />
      {result?.shape.state === 'ready' && (
        <PanelPart title={t('edge-outline')}>
          <OutlineFigures result={result} />
        </PanelPart>
      )}
      <LeanPart slab={slab} />
    </>
  )
}

function OutlineParts({ slab, result, outline }: Props & { readonly outline: Trace }) {
  return (
    <>
      <OutlinePart slab={slab} result={result} outline={outline} />
      <MendPart slabId={slab.id} outline={outline} scale={scaleOn(result, outline.photoId)} />
    </>
  )
}

/** The traced outline and the voids in it. */
export function EdgePanel() {
  const slab = useSlab()
  const result = usePlanResult().slabs.get(slab?.id ?? '')
  const photo = usePhotoOf(slab)
  if (slab?.capture.kind === 'stations') {
    return <TapedOutline slab={slab} stations={slab.capture.stations} result={result} />
  }
  if (slab === null || photo === null) return <NoPhotoYet />
  const traces = tracesOf(slab)
  const outline = traces.find(({ meaning, photoId }) => meaning.kind === 'outline' && photoId === photo.id)
  return (
    <>
      <PhotoChoice slab={slab} photo={photo} />
      {outline !== undefined && <OutlineParts slab={slab} result={result} outline={outline} />}
      <FindEdgePart photo={photo} outline={outline} />
      <VoidsPart slab={slab} result={result} traces={traces} photo={photo} outline={outline} />
      {outline !== undefined && <LeanPart slab={slab} />}
    </>
  )
}
