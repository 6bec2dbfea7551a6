import type { Slab } from '../../../core/plan'
import { speciesNamed } from '../../../core/wood'
import { CheckField } from '../../fields/CheckField'
import { OptionalNumberField } from '../../fields/OptionalNumberField'
import { bt } from './bt'
import { ShareField } from './ShareField'
import { changeWood } from './useBuild'

type Own = NonNullable<Slab['wood']['own']>

/** Middling figures of a hardwood to begin with; common practice, no source: the maker's own replace them. */
const MIDDLING: Own = {
  gravity: 0.6,
  radialFraction: 0.05,
  tangentialFraction: 0.09,
  volumetricFraction: 0.14,
  elasticityGPa: null,
}

function startingOwn(species: string | null): Own {
  const known = species === null ? null : speciesNamed(species)
  if (known === null) return MIDDLING
  return {
    gravity: known.gravity.value,
    radialFraction: known.radialFraction.value,
    tangentialFraction: known.tangentialFraction.value,
    volumetricFraction: known.volumetricFraction.value,
    elasticityGPa: known.elasticityGPa?.value ?? null,
  }
}

const SHRINKAGES = [
  ['wood-radial', 'radialFraction'],
  ['wood-tangential', 'tangentialFraction'],
  ['wood-volume', 'volumetricFraction'],
] as const

/** The maker's own figures of a wood, in place of the table's. */
export function OwnWoodFields({ slab }: { readonly slab: Slab }) {
  const { own } = slab.wood
  const set = (changes: Partial<Own>) => {
    if (own !== null) changeWood(slab.id, { own: { ...own, ...changes } })
  }
  return (
    <>
      <CheckField
        label={bt('wood-own')}
        checked={own !== null}
        onChange={(isOwn) => changeWood(slab.id, { own: isOwn ? startingOwn(slab.species) : null })}
      />
      {own !== null && (
        <div className="field-pairs">
          <OptionalNumberField
            label={bt('wood-gravity')}
            value={own.gravity}
            limits={{ least: 0.1, greatest: 1.4 }}
            onChange={(gravity) => gravity !== null && set({ gravity })}
          />
          <OptionalNumberField
            label={bt('wood-stiffness')}
            value={own.elasticityGPa}
            limits={{ least: 0.1, greatest: 40 }}
            onChange={(elasticityGPa) => set({ elasticityGPa })}
          />
          {SHRINKAGES.map(([label, key]) => (
            <ShareField
              key={key}
              label={bt(label)}
              fraction={own[key]}
              least={0.005}
              greatest={0.3}
              onChange={(fraction) => fraction !== null && set({ [key]: fraction })}
            />
          ))}
        </div>
      )}
    </>
  )
}
