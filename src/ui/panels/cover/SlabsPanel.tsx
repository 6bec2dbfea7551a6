import { useState } from 'react'
import {
  bestSlab,
  cheaperSlabs,
  compareSlabs,
  type Option,
  SLAB_ORDERS,
  type SlabOrder,
  type SlabRow,
} from '../../../core/plan'
import { setCoverWishes } from '../../../state/commands'
import { run } from '../../../state/run'
import { LengthField } from '../../fields/LengthField'
import { PercentField } from '../../fields/PercentField'
import { t } from '../../text/t'
import { useDisplay } from '../../text/useDisplay'
import { useFormat } from '../../text/useFormat'
import { useOption } from '../../useActive'
import { MoreInputs } from '../pour/MoreInputs'
import { AddSlab } from './AddSlab'
import { SlabCard } from './SlabCard'
import { TwoSlabs } from './TwoSlabs'
import { type SlabRows, useSlabRows } from './useSlabRows'
import { cheaperWords, slabName, slabVerdictText } from './verdictWords'

interface BestProps {
  readonly best: SlabRow
  readonly rows: readonly SlabRow[]
}

/** The one to buy, why it, and why not a cheaper one. */
function Best({ best, rows }: BestProps) {
  const format = useFormat()
  const display = useDisplay()
  const cheaper = cheaperSlabs(rows, best)
  const cost = best.materialCents === null ? null : format.money(best.materialCents)
  return (
    <div className="slabs-best">
      <p>
        <strong>{t('slabs-best', { name: slabName(best) })}</strong>
      </p>
      <p>
        {slabVerdictText(best, format, display)}{' '}
        {cost !== null && t(cheaper.length === 0 ? 'slabs-best-least' : 'slabs-best-cost', { cost })}
      </p>
      {cheaper.length > 0 && (
        <p className="note">
          {t('slabs-cheaper', { slabs: cheaper.map((row) => cheaperWords(row, format)).join('; ') })}
        </p>
      )}
    </div>
  )
}

/** Which to buy and why, before anything else. */
function Headline({ rows, over, all, cancel }: SlabRows) {
  const best = bestSlab(rows)
  const isBusy = over < all
  return (
    <>
      {best === null
        ? !isBusy && rows.length > 0 && <p className="slabs-best">{t('slabs-none')}</p>
        : rows.length > 1 && <Best best={best} rows={rows} />}
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

/** What holds for every slab alike. */
function SharedWishes({ option }: { readonly option: Option }) {
  const { cleaningMm, mostResinShare } = option.cover
  const set = (cover: Partial<Option['cover']>) => run(setCoverWishes, { optionId: option.id, cover })
  return (
    <MoreInputs title={t('slabs-wishes')}>
      <div className="field-grid">
        <LengthField
          label={t('slabs-cleaning')}
          valueMm={cleaningMm}
          limits={{ leastMm: 0, greatestMm: 100 }}
          onChange={(mm) => set({ cleaningMm: mm })}
        />
        <PercentField
          label={t('slabs-most-resin')}
          fraction={mostResinShare}
          onChange={(share) => set({ mostResinShare: share })}
        />
      </div>
    </MoreInputs>
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
      <SharedWishes option={option} />
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
