import type { Slab } from '../../core/plan'
import { setSlabFacts } from '../../state/commands'
import { run } from '../../state/run'
import { ChoiceGroup } from '../fields/ChoiceGroup'
import { LengthField } from '../fields/LengthField'
import { t } from '../text/t'
import { PanelPart } from './PanelPart'

/** As far as a live edge leans out or in; the schema holds no more. */
const GREATEST_LEAN_MM = 300

/** How the live edge runs from the top to the underside, and which of them is up in the form. */
export function LeanPart({ slab }: { readonly slab: Slab }) {
  const bevel = slab.edges?.bevel ?? { kind: 'upright' }
  const faceUpInForm = slab.edges?.faceUpInForm ?? 'top'
  const set = (edges: NonNullable<Slab['edges']>) => run(setSlabFacts, { slabId: slab.id, facts: { edges } })
  return (
    <PanelPart title={t('lean-title')}>
      <LengthField
        label={t('lean-wider')}
        hint={t('lean-wider-hint')}
        valueMm={bevel.kind === 'upright' ? 0 : bevel.mm}
        limits={{ leastMm: -GREATEST_LEAN_MM, greatestMm: GREATEST_LEAN_MM }}
        onChange={(mm) =>
          set({ faceUpInForm, bevel: mm === 0 ? { kind: 'upright' } : { kind: 'wider', mm } })
        }
      />
      {bevel.kind === 'wider' && (
        <ChoiceGroup
          label={t('lean-face')}
          value={faceUpInForm}
          options={(['top', 'underside'] as const).map((value) => ({
            value,
            label: t(`lean-face-${value}`),
          }))}
          onChange={(face) => set({ bevel, faceUpInForm: face })}
        />
      )}
    </PanelPart>
  )
}
