import { useState } from 'react'
import { bestSlab, compareSlabs, type Option, SLAB_ORDERS, type SlabOrder } from '../../../core/plan'
import { addSlabPhotoFromDevice } from '../../files/jobFiles'
import { t } from '../../text/t'
import { useDisplay } from '../../text/useDisplay'
import { useFormat } from '../../text/useFormat'
import { useOption } from '../../useActive'
import { PanelPart } from '../PanelPart'
import { SlabCard } from './SlabCard'
import { TwoSlabs } from './TwoSlabs'
import { type SlabRows, useSlabRows } from './useSlabRows'
import { slabVerdictText } from './verdictWords'
import { YardSlab } from './YardSlab'

/** Which to buy and why, before anything else. */
function Headline({ rows, over, all, cancel }: SlabRows) {
  const format = useFormat()
  const display = useDisplay()
  const best = bestSlab(rows)
  const isBusy = over < all
  return (
    <>
      {best === null
        ? !isBusy && rows.length > 0 && <p className="slabs-best">{t('slabs-none')}</p>
        : rows.length > 1 && (
            <p className="slabs-best">
              {t('slabs-best', {
                name: `${best.slab.name} ${best.slab.tag}`.trim(),
                why: slabVerdictText(best, format, display),
                cost:
                  best.materialCents === null
                    ? ''
                    : t('slabs-best-cost', { cost: format.money(best.materialCents) }),
              })}
            </p>
          )}
      {isBusy && (
        <div className="search-line" role="status">
          <label>
            {t('slabs-comparing', { over, all })}
            <progress max={all} value={over} />
          </label>
          <button type="button" className="button button-small" onClick={cancel}>
            {t('job-cancel')}
          </button>
        </div>
      )}
    </>
  )
}

function AddSlab({ count }: { readonly count: number }) {
  const [isTyping, setTyping] = useState(false)
  return (
    <PanelPart title={t('slabs-add')}>
      {isTyping ? (
        <YardSlab number={count + 1} onDone={() => setTyping(false)} />
      ) : (
        <div className="button-row">
          <button type="button" className="button" onClick={() => setTyping(true)}>
            {t('slabs-add-tape')}
          </button>
          <button type="button" className="button" onClick={() => void addSlabPhotoFromDevice()}>
            {t('slabs-add-photo')}
          </button>
        </div>
      )}
    </PanelPart>
  )
}

function Compared({ option }: { readonly option: Option }) {
  const [order, setOrder] = useState<SlabOrder>('answer')
  const found = useSlabRows(option)
  const sorted = compareSlabs(found.rows, order)
  const hasCover = found.rows.some(
    ({ verdict }) => verdict.kind === 'covers' || verdict.kind === 'covers-kept',
  )
  return (
    <>
      <Headline {...found} />
      {found.rows.length > 1 && (
        <label className="slabs-order">
          <span className="field-label">{t('slabs-order')}</span>
          <select
            value={order}
            onChange={({ currentTarget }) =>
              setOrder(SLAB_ORDERS.find((each) => each === currentTarget.value) ?? 'answer')
            }
          >
            {SLAB_ORDERS.map((each) => (
              <option key={each} value={each}>
                {t(`slabs-order-${each}`)}
              </option>
            ))}
          </select>
        </label>
      )}
      <ul className="cards">
        {sorted.map((row) => (
          <SlabCard key={row.slab.id} row={row} option={option} />
        ))}
      </ul>
      <AddSlab count={found.rows.length} />
      {!hasCover && found.rows.length > 1 && <TwoSlabs option={option} rows={found.rows} />}
    </>
  )
}

/** Slabs side by side: which one carries the table, and at what price. */
export function SlabsPanel() {
  const option = useOption()
  return option === null ? null : <Compared option={option} />
}
