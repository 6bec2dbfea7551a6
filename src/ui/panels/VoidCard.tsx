import { useStore } from 'zustand'
import { GREATEST_LENGTH_MM, type Slab, type SlabResult, type Trace } from '../../core/plan'
import { removeTrace, setTraceMeaning } from '../../state/commands'
import { run } from '../../state/run'
import { sessionStore } from '../../state/sessionStore'
import { ChoiceGroup } from '../fields/ChoiceGroup'
import { LengthField } from '../fields/LengthField'
import { placeName } from '../stages/goToStage'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'
import { Figures } from './Figures'
import { PointList } from './PointList'
import { useIssueAt } from './useIssues'

type VoidMeaning = Extract<Trace['meaning'], { kind: 'void' }>

interface Props {
  readonly slab: Slab
  readonly trace: Trace
  readonly meaning: VoidMeaning
  readonly name: string
  readonly result: SlabResult | undefined
}

/** Of slabs as they are sold. Common practice, no source. */
const USUAL_THICKNESS_MM = 50

function DepthFields({ slab, trace, meaning, name, issue }: Props & { readonly issue: string | undefined }) {
  const set = (depth: VoidMeaning['depth']) =>
    run(setTraceMeaning, { slabId: slab.id, traceId: trace.id, meaning: { kind: 'void', depth } })
  // Half of the slab is as good a first guess as any; the maker measures it with a stick.
  const partial = { kind: 'partial', depthMm: (slab.thicknessMm ?? USUAL_THICKNESS_MM) / 2 } as const
  return (
    <>
      <ChoiceGroup<'through' | 'partial'>
        label={t('edge-void-depth-of', { name })}
        labelHidden
        value={meaning.depth.kind}
        onChange={(kind) => set(kind === 'through' ? { kind } : partial)}
        options={[
          { value: 'through', label: t('edge-void-through') },
          { value: 'partial', label: t('edge-void-partial') },
        ]}
      />
      {meaning.depth.kind === 'partial' ? (
        <LengthField
          label={t('edge-void-depth')}
          valueMm={meaning.depth.depthMm}
          limits={{ leastMm: 0.5, greatestMm: GREATEST_LENGTH_MM }}
          issue={issue}
          onChange={(depthMm) => set({ kind: 'partial', depthMm })}
        />
      ) : (
        issue !== undefined && <p className="field-problem">{issue}</p>
      )}
    </>
  )
}

/** One traced void: how deep it is, and how large. */
export function VoidCard(props: Props) {
  const { slab, trace, name, result } = props
  const format = useFormat()
  const issueAt = useIssueAt()
  const isSelected = useStore(
    sessionStore,
    ({ selection }) => selection?.kind === 'trace' && selection.traceId === trace.id,
  )
  const scale = result?.scale.state === 'ready' ? result.scale.value : null
  const found =
    result?.shape.state === 'ready'
      ? result.shape.value.voids.find(({ traceId }) => traceId === trace.id)
      : undefined
  return (
    <li
      className="card"
      data-place={placeName('traces', trace.id)}
      data-selected={isSelected ? '' : undefined}
    >
      <div className="row-head">
        <strong>{name}</strong>
        <button
          type="button"
          className="button button-small"
          onClick={() => run(removeTrace, { slabId: slab.id, traceId: trace.id })}
        >
          {t('remove')}
          <span className="unseen"> {name}</span>
        </button>
      </div>
      <DepthFields {...props} issue={issueAt('slabs', slab.id, 'traces', trace.id)} />
      {found !== undefined && (
        <Figures rows={[{ name: t('edge-area'), figure: format.area(found.areaMm2) }]} />
      )}
      {scale !== null && <PointList slabId={slab.id} trace={trace} scale={scale} />}
    </li>
  )
}
