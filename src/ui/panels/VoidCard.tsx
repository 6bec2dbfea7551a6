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

type Meaning = Exclude<Trace['meaning'], { kind: 'outline' }>
type VoidMeaning = Extract<Meaning, { readonly depth: unknown }>

interface Props {
  readonly slab: Slab
  readonly trace: Trace
  readonly meaning: Meaning
  readonly name: string
  readonly result: SlabResult | undefined
}

/** Of slabs as they are sold. Common practice, no source. */
const USUAL_THICKNESS_MM = 50

interface DepthProps extends Pick<Props, 'slab' | 'trace' | 'name'> {
  readonly meaning: VoidMeaning
  readonly issue: string | undefined
}

function DepthFields({ slab, trace, meaning, name, issue }: DepthProps) {
  const set = (depth: VoidMeaning['depth']) =>
    run(setTraceMeaning, { slabId: slab.id, traceId: trace.id, meaning: { ...meaning, depth } })
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

const THROUGH = { kind: 'through' } as const

/** The same line taken for something else; a depth is kept where there is one. */
function meaningAs(kind: Meaning['kind'], before: Meaning): Meaning {
  if (kind === 'void' || kind === 'crack') return { kind, depth: 'depth' in before ? before.depth : THROUGH }
  return { kind }
}

const KINDS = ['void', 'crack', 'bark', 'defect', 'figure'] as const

function MeaningFields({
  slab,
  trace,
  meaning,
  name,
  issue,
}: Props & { readonly issue: string | undefined }) {
  return (
    <>
      <ChoiceGroup<Meaning['kind']>
        label={t('edge-meaning-of', { name })}
        labelHidden
        value={meaning.kind}
        onChange={(kind) =>
          run(setTraceMeaning, { slabId: slab.id, traceId: trace.id, meaning: meaningAs(kind, meaning) })
        }
        options={KINDS.map((value) => ({ value, label: t(`edge-meaning-${value}`) }))}
      />
      {'depth' in meaning ? (
        <DepthFields slab={slab} trace={trace} meaning={meaning} name={name} issue={issue} />
      ) : (
        <>
          <p className="note">{t(`edge-${meaning.kind}-note`)}</p>
          {issue !== undefined && <p className="field-problem">{issue}</p>}
        </>
      )}
    </>
  )
}

/** One line within the outline: what it is, how deep it is, and how large. */
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
      ? [...result.shape.value.voids, ...result.shape.value.places].find(
          ({ traceId }) => traceId === trace.id,
        )
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
      <MeaningFields {...props} issue={issueAt('slabs', slab.id, 'traces', trace.id)} />
      {found !== undefined && (
        <Figures rows={[{ name: t('edge-area'), figure: format.area(found.areaMm2) }]} />
      )}
      {scale !== null && <PointList slabId={slab.id} trace={trace} scale={scale} />}
    </li>
  )
}
