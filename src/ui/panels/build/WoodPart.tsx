import { type BuildResult, buildWords, type Option, type Slab } from '../../../core/plan'
import { type Cited, type Sawn, speciesNamed, WOOD_SPECIES } from '../../../core/wood'
import { formatNumber, formatPercent } from '../../../core/units'
import { setSlabFacts } from '../../../state/commands'
import { run } from '../../../state/run'
import { ChoiceGroup } from '../../fields/ChoiceGroup'
import { LengthField } from '../../fields/LengthField'
import { SelectField } from '../../fields/SelectField'
import { TemperatureField } from '../../fields/TemperatureField'
import { Figures } from '../Figures'
import { PanelPart } from '../PanelPart'
import { MoreInputs } from '../pour/MoreInputs'
import { bt } from './bt'
import { OwnWoodFields } from './OwnWoodFields'
import { ShareField } from './ShareField'
import { changeRoom, changeWood, useBuildSlab } from './useBuild'

const NO_SPECIES = 'none'
const SPECIES_OPTIONS = WOOD_SPECIES.map(({ id, name, latinName }) => ({
  value: id,
  label: `${name} (${latinName})`,
})).toSorted((a, b) => a.label.localeCompare(b.label, 'en'))

function SpeciesField({ slab }: { readonly slab: Slab }) {
  const known = slab.species === null ? null : speciesNamed(slab.species)
  const unsaid =
    slab.species === null || known !== null
      ? bt('wood-species-none')
      : `${slab.species}: ${bt('wood-species-none')}`
  return (
    <SelectField<string>
      label={bt('wood-species')}
      value={known?.id ?? NO_SPECIES}
      options={[{ value: NO_SPECIES, label: unsaid }, ...SPECIES_OPTIONS]}
      onChange={(id) =>
        run(setSlabFacts, {
          slabId: slab.id,
          facts: { species: WOOD_SPECIES.find((species) => species.id === id)?.name ?? null },
        })
      }
    />
  )
}

function Sources({ wood }: { readonly wood: BuildResult['wood'] }) {
  const { species } = wood
  if (species === null) return null
  const share = (cited: Cited) => ({ ...cited, text: formatPercent(cited.value, { decimals: 1 }) })
  const rows = [
    [bt('wood-gravity'), { ...species.gravity, text: formatNumber(species.gravity.value, { decimals: 2 }) }],
    [bt('wood-radial'), share(species.radialFraction)],
    [bt('wood-tangential'), share(species.tangentialFraction)],
    [bt('wood-volume'), share(species.volumetricFraction)],
    ...(species.elasticityGPa === null
      ? []
      : ([
          [
            bt('wood-stiffness'),
            {
              ...species.elasticityGPa,
              text: formatNumber(species.elasticityGPa.value, { decimals: 1 }),
            },
          ],
        ] as const)),
  ] as const
  return (
    <MoreInputs title={bt('wood-sources')}>
      <Figures
        rows={rows.map(([name, { text, source }]) => ({
          name,
          figure: bt('wood-source', { value: text, source: buildWords.source(source) }),
        }))}
      />
    </MoreInputs>
  )
}

function RoomFields({ option }: { readonly option: Option }) {
  const { room } = option
  return (
    <PanelPart title={bt('room-title')}>
      <div className="field-pairs">
        <TemperatureField
          label={bt('room-temperature')}
          celsius={room.roomC}
          leastC={-10}
          greatestC={45}
          onChange={(roomC) => changeRoom(option.id, { roomC })}
        />
        <ShareField
          label={bt('wood-limit')}
          fraction={room.greatestPourMoisture}
          onChange={(limit) => limit !== null && changeRoom(option.id, { greatestPourMoisture: limit })}
        />
        <ShareField
          label={bt('room-dry')}
          fraction={room.dryHumidity}
          onChange={(dryHumidity) => dryHumidity !== null && changeRoom(option.id, { dryHumidity })}
        />
        <ShareField
          label={bt('room-damp')}
          fraction={room.dampHumidity}
          onChange={(dampHumidity) => dampHumidity !== null && changeRoom(option.id, { dampHumidity })}
        />
        <LengthField
          label={bt('moves-screw')}
          valueMm={room.screwMm}
          limits={{ leastMm: 1, greatestMm: 30 }}
          onChange={(screwMm) => changeRoom(option.id, { screwMm })}
        />
      </div>
    </PanelPart>
  )
}

interface Props {
  readonly option: Option
  readonly wood: BuildResult['wood'] | null
}

/** Which wood, how it is sawn and how damp it is; and the room that it will live in. */
export function WoodPart({ option, wood }: Props) {
  const slab = useBuildSlab()
  if (slab === null) return null
  return (
    <>
      <PanelPart title={bt('wood-title')}>
        <SpeciesField slab={slab} />
        <ChoiceGroup<Sawn>
          label={bt('wood-sawn')}
          value={slab.wood.sawn}
          onChange={(sawn) => changeWood(slab.id, { sawn })}
          options={(['flat', 'between', 'quarter'] as const).map((value) => ({
            value,
            label: bt(`wood-sawn-${value}`),
          }))}
        />
        <ShareField
          label={bt('wood-moisture')}
          fraction={slab.moistureFraction}
          onChange={(moistureFraction) => run(setSlabFacts, { slabId: slab.id, facts: { moistureFraction } })}
        />
        {wood !== null && <Sources wood={wood} />}
        <OwnWoodFields slab={slab} />
      </PanelPart>
      <RoomFields option={option} />
    </>
  )
}
