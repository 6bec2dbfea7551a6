import type { BuildResult, Option } from '../../../core/plan'
import { CheckField } from '../../fields/CheckField'
import { LengthField } from '../../fields/LengthField'
import { PanelPart } from '../PanelPart'
import { bt } from './bt'
import { changeStanding } from './useBuild'

type Standing = Option['standing']
type Opening = 'door' | 'lift' | 'turn'

/** Usual sizes to begin with; common practice, no source: the tape replaces them. */
const DOOR = { widthMm: 830, heightMm: 2000 }
const STARTING = {
  door: DOOR,
  lift: { door: { widthMm: 800, heightMm: 2000 }, widthMm: 1100, depthMm: 1400, heightMm: 2200 },
  turn: { beforeMm: 1000, afterMm: 1000, headroomMm: 2200 },
} as const satisfies { readonly [K in Opening]: NonNullable<Standing[K]> }

type Sizes = readonly (readonly [label: string, valueMm: number, set: (mm: number) => void])[]

function sizesOf(option: Option, which: Opening): Sizes {
  const { door, lift, turn } = option.standing
  const set = (changes: Partial<Standing>) => changeStanding(option.id, changes)
  if (which === 'door' && door !== null) {
    return [
      [bt('way-width'), door.widthMm, (widthMm) => set({ door: { ...door, widthMm } })],
      [bt('way-height'), door.heightMm, (heightMm) => set({ door: { ...door, heightMm } })],
    ]
  }
  if (which === 'lift' && lift !== null) {
    const setDoor = (changes: Partial<typeof lift.door>) =>
      set({ lift: { ...lift, door: { ...lift.door, ...changes } } })
    return [
      [bt('way-door-width'), lift.door.widthMm, (widthMm) => setDoor({ widthMm })],
      [bt('way-door-height'), lift.door.heightMm, (heightMm) => setDoor({ heightMm })],
      [bt('way-width'), lift.widthMm, (widthMm) => set({ lift: { ...lift, widthMm } })],
      [bt('way-depth'), lift.depthMm, (depthMm) => set({ lift: { ...lift, depthMm } })],
      [bt('way-height'), lift.heightMm, (heightMm) => set({ lift: { ...lift, heightMm } })],
    ]
  }
  if (which === 'turn' && turn !== null) {
    return [
      [bt('way-before'), turn.beforeMm, (beforeMm) => set({ turn: { ...turn, beforeMm } })],
      [bt('way-after'), turn.afterMm, (afterMm) => set({ turn: { ...turn, afterMm } })],
      [bt('way-headroom'), turn.headroomMm, (headroomMm) => set({ turn: { ...turn, headroomMm } })],
    ]
  }
  return []
}

interface WayProps {
  readonly option: Option
  readonly which: Opening
  /** Null: not known. */
  readonly passes: boolean | null
}

function Way({ option, which, passes }: WayProps) {
  const isMeasured = option.standing[which] !== null
  const title = bt(`way-${which}`)
  return (
    <fieldset className="choice way-in">
      <legend className="unseen">{title}</legend>
      <CheckField
        label={`${title}, ${bt('way-measured')}`}
        checked={isMeasured}
        onChange={(isOn) => changeStanding(option.id, { [which]: isOn ? STARTING[which] : null })}
      />
      {isMeasured && (
        <div className="field-pairs">
          {sizesOf(option, which).map(([label, valueMm, set]) => (
            <LengthField
              key={label}
              label={label}
              valueMm={valueMm}
              limits={{ leastMm: 100, greatestMm: 20_000 }}
              onChange={set}
            />
          ))}
        </div>
      )}
      {isMeasured && passes !== null && (
        <p className={passes ? 'way-passes' : 'example-warning'}>
          {bt(passes ? 'way-passes' : 'way-blocked')}
        </p>
      )}
    </fieldset>
  )
}

/** Door, lift and turn of the stair, as far as they were measured. */
export function WayInPart({
  option,
  standing,
}: {
  option: Option
  standing: BuildResult['standing'] | null
}) {
  return (
    <PanelPart title={bt('way-title')} note={bt('way-note')}>
      {(['door', 'lift', 'turn'] as const).map((which) => (
        <Way key={which} option={option} which={which} passes={standing?.[which] ?? null} />
      ))}
      <LengthField
        label={bt('way-room')}
        valueMm={option.standing.roomMm}
        limits={{ leastMm: 0, greatestMm: 500 }}
        onChange={(roomMm) => changeStanding(option.id, { roomMm })}
      />
    </PanelPart>
  )
}
