import { useState } from 'react'
import {
  type LengthDisplay,
  parseLengthWithin,
  parseMoneyCents,
  parseNumberWithin,
  type Result,
} from '../../../core/units'
import { addYardSlab } from '../../../state/commands'
import { newId } from '../../../state/newId'
import { run } from '../../../state/run'
import { t } from '../../text/t'
import { useDescribeProblem } from '../../text/useDescribeProblem'
import { useDisplay } from '../../text/useDisplay'

const ASKED = ['length', 'narrowest', 'widest', 'thickness', 'moisture', 'price'] as const
type Asked = (typeof ASKED)[number]
type Typed = Readonly<Record<Asked, string>>

const NOTHING: Typed = { length: '', narrowest: '', widest: '', thickness: '', moisture: '', price: '' }
const LIMITS = { leastMm: 5, greatestMm: 20_000 }

function read(asked: Asked, text: string, display: LengthDisplay): Result<number> {
  if (asked === 'moisture') return parseNumberWithin(text, { least: 0, greatest: 100 })
  if (asked === 'price') return parseMoneyCents(text, { leastCents: 0, greatestCents: 1_000_000_000 })
  return parseLengthWithin(text, display, LIMITS)
}

function Keys({ onKey }: { readonly onKey: (key: string) => void }) {
  const display = useDisplay()
  const last = display.system === 'inch' ? ['/', ' '] : ['.']
  const keys = ['1', '2', '3', '4', '5', '6', '7', '8', '9', ...last, '0', '⌫']
  return (
    <div className="big-keys">
      {keys.map((key) => (
        <button
          key={key}
          type="button"
          className="button"
          aria-label={keyName(key)}
          onClick={() => onKey(key)}
        >
          {key === ' ' ? '␣' : key}
        </button>
      ))}
    </div>
  )
}

const keyName = (key: string): string | undefined => {
  if (key === '⌫') return t('slabs-key-back')
  return key === ' ' ? t('slabs-key-space') : undefined
}

/** A slab in the yard: six figures on big keys, one hand; whatever is left empty is not known. */
export function YardSlab({ number, onDone }: { readonly number: number; readonly onDone: () => void }) {
  const display = useDisplay()
  const describe = useDescribeProblem()
  const [typed, setTyped] = useState<Typed>(NOTHING)
  const [place, setPlace] = useState(0)
  const asked = ASKED[place] ?? 'length'
  const results = ASKED.map((each) => (typed[each] === '' ? null : read(each, typed[each], display)))
  const own = results[place]
  const problem = own !== null && own !== undefined && !own.ok ? describe(own.problem) : null
  const valueOf = (each: Asked): number | null => {
    const result = results[ASKED.indexOf(each)]
    return result?.ok === true ? result.value : null
  }
  const press = (key: string) =>
    setTyped((before) => ({
      ...before,
      [asked]: key === '⌫' ? before[asked].slice(0, -1) : before[asked] + key,
    }))
  const isWhole = typed.length !== '' && results.every((result) => result === null || result.ok)
  const keep = () => {
    const moisture = valueOf('moisture')
    run(addYardSlab, {
      slabId: newId(),
      name: t('slabs-yard-name', { number }),
      tape: { lengthMm: valueOf('length'), narrowestMm: valueOf('narrowest'), widestMm: valueOf('widest') },
      facts: {
        thicknessMm: valueOf('thickness'),
        moistureFraction: moisture === null ? null : moisture / 100,
        priceCents: valueOf('price'),
      },
    })
    onDone()
  }
  return (
    <div className="card yard-slab">
      <div className="yard-asked" role="group" aria-label={t('slabs-yard-title')}>
        {ASKED.map((each, n) => (
          <button
            key={each}
            type="button"
            className="button"
            aria-pressed={n === place}
            onClick={() => setPlace(n)}
          >
            <span>{t(`slabs-ask-${each}`)}</span>
            <strong>{typed[each] === '' ? '–' : typed[each]}</strong>
          </button>
        ))}
      </div>
      {problem !== null && <p role="alert">{problem}</p>}
      <Keys onKey={press} />
      <div className="button-row">
        <button
          type="button"
          className="button"
          disabled={place === ASKED.length - 1}
          onClick={() => setPlace(place + 1)}
        >
          {t('slabs-next')}
        </button>
        <button type="button" className="button button-main" disabled={!isWhole} onClick={keep}>
          {t('slabs-keep')}
        </button>
        <button type="button" className="button" onClick={onDone}>
          {t('slabs-close')}
        </button>
      </div>
    </div>
  )
}
