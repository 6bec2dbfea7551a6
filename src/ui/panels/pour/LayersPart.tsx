import { hourText, parseHour, type Option } from '../../../core/plan'
import type { LayerPlan, PourHeat } from '../../../core/resin'
import { OptionalLengthField } from '../../fields/LengthField'
import { ParsedField } from '../../fields/ParsedField'
import { placeName } from '../../stages/goToStage'
import { t } from '../../text/t'
import { useFormat } from '../../text/useFormat'
import { Figures } from '../Figures'
import { PanelPart } from '../PanelPart'
import { heatRows, mixRows, type Words } from './layerFigures'
import { changeResin, hourWords } from './usePour'

type HandLayer = Option['resin']['layers'][number]

const AUTOMATIC: HandLayer = { depthMm: null, startHour: null }

/** The layers set by hand with one of them changed; what is left to the plan at the end is not kept. */
export function withHandLayer(
  layers: readonly HandLayer[],
  index: number,
  changes: Partial<HandLayer>,
): readonly HandLayer[] {
  const count = Math.max(layers.length, index + 1)
  const next = Array.from({ length: count }, (_, at) => ({
    ...(layers[at] ?? AUTOMATIC),
    ...(at === index ? changes : {}),
  }))
  const isSet = (layer: HandLayer) => layer.depthMm !== null || layer.startHour !== null
  return next.slice(0, next.findLastIndex(isSet) + 1)
}

interface CardProps {
  readonly option: Option
  readonly layer: LayerPlan
  readonly isLast: boolean
  readonly words: Words
}

function LayerFields({ option, layer }: CardProps) {
  const index = layer.layer - 1
  const { layers } = option.resin
  const set = (changes: Partial<HandLayer>) =>
    changeResin(option.id, { layers: withHandLayer(layers, index, changes) })
  // The first pour starts when the maker says: at the hour of the room and hours below.
  return (
    <div className="field-pairs">
      <OptionalLengthField
        label={t('pour-layer-depth-of', { number: layer.layer })}
        valueMm={Math.round(layer.depthMm * 10) / 10}
        limits={{ leastMm: 0.5, greatestMm: 500 }}
        onChange={(depthMm) => set({ depthMm })}
      />
      <ParsedField<number>
        label={t('pour-layer-start-of', { number: layer.layer })}
        shown={hourText(layer.startHour, null)}
        parse={(text) => parseHour(text, layer.startHour)}
        onCommit={(startHour) => set({ startHour })}
      />
    </div>
  )
}

function LayerCard(props: CardProps) {
  const { option, layer, isLast, words } = props
  const { format, when } = words
  const hand = option.resin.layers[layer.layer - 1]
  const isByHand = hand !== undefined && (hand.depthMm !== null || hand.startHour !== null)
  return (
    <li
      className="card layer-card"
      data-layer={layer.layer}
      data-place={placeName('pour', String(layer.layer))}
    >
      <div className="row-head">
        <strong>{t('pour-layer', { number: layer.layer })}</strong>
        <span className="layer-when">{when(layer.startHour)}</span>
      </div>
      <p className="note">
        {t('pour-layer-levels', { from: format.length(layer.fromMm), to: format.length(layer.toMm) })}
        {isByHand && <> · {t('pour-layer-by-hand')}</>}
      </p>
      <LayerFields {...props} />
      {isByHand && (
        <button
          type="button"
          className="button-link"
          onClick={() =>
            changeResin(option.id, { layers: withHandLayer(option.resin.layers, layer.layer - 1, AUTOMATIC) })
          }
        >
          {t('pour-layer-auto')}
          <span className="unseen"> {t('pour-layer', { number: layer.layer })}</span>
        </button>
      )}
      {layer.scuffBefore && <p className="example-warning">{t('pour-scuff')}</p>}
      <Figures rows={mixRows(layer, words)} />
      <Figures rows={heatRows(layer, isLast, words)} />
      <p className="field-label">{t('pour-look')}</p>
      <ul className="looks">
        {layer.looks.map((look) => (
          <li key={look.why}>
            {t('pour-look-at', { when: when(look.hour), reading: format.temperature(look.surfaceC) })}
          </li>
        ))}
      </ul>
      <p className="note">
        {t('pour-rules-by')}:{' '}
        {t('pour-rules-by-gaps', { widest: layer.widestName, narrowest: layer.narrowestName })}
      </p>
    </li>
  )
}

/** Every pour in order, with what it takes and when; depth and start can be changed by hand. */
export function LayersPart({ option, heat }: { readonly option: Option; readonly heat: PourHeat }) {
  const words = { format: useFormat(), when: hourWords(option.resin) }
  return (
    <PanelPart title={t('pour-layers-title')} note={t('pour-layers-note')}>
      <ol className="cards">
        {heat.layers.map((layer) => (
          <LayerCard
            key={layer.layer}
            option={option}
            layer={layer}
            isLast={layer.layer === heat.layers.length}
            words={words}
          />
        ))}
      </ol>
      <p className="note">{t('pour-finger-test')}</p>
    </PanelPart>
  )
}
