import type { Slab } from '../../core/plan'
import { setFlatness } from '../../state/commands'
import { run } from '../../state/run'
import { ChoiceGroup } from '../fields/ChoiceGroup'
import { LengthField } from '../fields/LengthField'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'
import { DEFAULT_OUT_OF_FLAT_MM } from '../../core/photo'
import { PanelPart } from './PanelPart'

type Flatness = Slab['flatness']

/** A straightedge on a rough face, and sticks read by eye: common practice, no source. */
const READING_SD_MM = 1
const READING_LIMITS = { leastMm: -500, greatestMm: 500 }
/** What the sticks show across the slab's width is four times the twist of one corner. */
const STICKS_PER_CORNER = 4

const nothingRead: Flatness = { kind: 'read', bowMm: 0, twistMm: 0, readingSdMm: READING_SD_MM }

/** How flat the face is: it cannot be told from tape, and moves what lies near the edge by as much as it is high. */
export function FlatnessPart({ slab }: { readonly slab: Slab }) {
  const format = useFormat()
  const { flatness } = slab
  const set = (after: Flatness) => run(setFlatness, { slabId: slab.id, flatness: after })
  return (
    <PanelPart
      title={t('flat-title')}
      note={t('flat-note', { unknown: format.length(DEFAULT_OUT_OF_FLAT_MM) })}
    >
      <ChoiceGroup<Flatness['kind']>
        label={t('flat-known')}
        value={flatness.kind}
        onChange={(kind) => set(kind === 'read' ? nothingRead : { kind: 'unknown' })}
        options={[
          { value: 'unknown', label: t('flat-unknown') },
          { value: 'read', label: t('flat-read') },
        ]}
      />
      {flatness.kind === 'read' && (
        <div className="field-pairs">
          <LengthField
            label={t('flat-bow')}
            hint={t('flat-bow-hint')}
            valueMm={flatness.bowMm}
            limits={READING_LIMITS}
            onChange={(bowMm) => set({ ...flatness, bowMm })}
          />
          <LengthField
            label={t('flat-sticks')}
            hint={t('flat-sticks-hint')}
            valueMm={flatness.twistMm * STICKS_PER_CORNER}
            limits={READING_LIMITS}
            onChange={(sticksMm) => set({ ...flatness, twistMm: sticksMm / STICKS_PER_CORNER })}
          />
        </div>
      )}
    </PanelPart>
  )
}
