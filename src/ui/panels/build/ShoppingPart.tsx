import { type BuildResult, roundedUp } from '../../../core/plan'
import { Figures } from '../Figures'
import { PanelPart } from '../PanelPart'
import { bt } from './bt'
import { quantityText } from './quantityText'

/** What is to be bought, rounded up. */
export function ShoppingPart({ shopping }: { readonly shopping: BuildResult['shopping'] }) {
  return (
    <PanelPart title={bt('shop-title')} note={bt('shop-note')}>
      {shopping.length === 0 ? (
        <p>{bt('shop-none')}</p>
      ) : (
        <Figures
          rows={shopping.map(({ name, quantity, unit }) => ({
            name,
            figure: quantityText(roundedUp(quantity, unit), unit),
          }))}
        />
      )}
    </PanelPart>
  )
}
