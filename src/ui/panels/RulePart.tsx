import { useStore } from 'zustand'
import { GREATEST_LENGTH_MM, type Slab } from '../../core/plan'
import { removeRule, setRule } from '../../state/commands'
import { run } from '../../state/run'
import type { RuleSize } from '../../state/preferences'
import { sessionStore, setPreferences, type TypedRule, wholeRule } from '../../state/sessionStore'
import { ActionButton } from '../actions/ActionButton'
import { LengthField, OptionalLengthField } from '../fields/LengthField'
import { placeName } from '../stages/goToStage'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'
import { OwnReferences } from './OwnReferences'
import { PanelPart } from './PanelPart'

const LENGTH_LIMITS = { leastMm: 20, greatestMm: GREATEST_LENGTH_MM }
const THICKNESS_LIMITS = { leastMm: 0, greatestMm: 500 }

interface SizeProps {
  readonly size: RuleSize
  readonly onChange: (changes: Partial<RuleSize>) => void
}

function RuleSizeFields({ size, onChange }: SizeProps) {
  return (
    <div className="field-pairs">
      <LengthField
        label={t('rule-length')}
        valueMm={size.lengthMm}
        limits={LENGTH_LIMITS}
        onChange={(lengthMm) => onChange({ lengthMm })}
      />
      <LengthField
        label={t('rule-thickness')}
        valueMm={size.thicknessMm}
        limits={THICKNESS_LIMITS}
        onChange={(thicknessMm) => onChange({ thicknessMm })}
      />
    </div>
  )
}

function LaidRule({ slab, rule }: { readonly slab: Slab; readonly rule: Slab['rules'][number] }) {
  const end = slab.marks.find(({ id }) => id === rule.endIds[0])
  const at = { slabId: slab.id, ruleId: rule.id }
  return (
    <div className="card" data-place={placeName('rules', rule.id)}>
      <div className="row-head">
        <strong>{rule.name}</strong>
        <button type="button" className="button button-small" onClick={() => run(removeRule, at)}>
          {t('remove')}
          <span className="unseen"> {rule.name}</span>
        </button>
      </div>
      <RuleSizeFields
        size={{ lengthMm: rule.lengthMm, thicknessMm: end?.heightMm ?? 0 }}
        onChange={(changes) => run(setRule, { ...at, ...changes })}
      />
    </div>
  )
}

const sayRule = (said: TypedRule): void => sessionStore.setState({ ruleSize: said })

function NextRule({ isFirst }: { readonly isFirst: boolean }) {
  const format = useFormat()
  const said = useStore(sessionStore, (session) => session.ruleSize)
  const own = useStore(sessionStore, (session) => session.ownRules)
  return (
    <>
      <strong>{t(isFirst ? 'rule-first' : 'rule-next')}</strong>
      <OwnReferences<RuleSize>
        own={own}
        sizeText={({ lengthMm, thicknessMm }) => `${format.length(lengthMm)} × ${format.length(thicknessMm)}`}
        typed={wholeRule(said)}
        onTake={sayRule}
        onChange={(ownRules) => setPreferences({ ownRules })}
      />
      <div className="field-pairs">
        <OptionalLengthField
          label={t('rule-length')}
          valueMm={said.lengthMm}
          limits={LENGTH_LIMITS}
          onChange={(lengthMm) => sayRule({ ...said, lengthMm })}
        />
        <OptionalLengthField
          label={t('rule-thickness')}
          valueMm={said.thicknessMm}
          limits={THICKNESS_LIMITS}
          onChange={(thicknessMm) => sayRule({ ...said, thicknessMm })}
        />
      </div>
    </>
  )
}

/** Rules, folding rules and battens of known length, each by its two ends. */
export function RulePart({ slab }: { readonly slab: Slab }) {
  return (
    <PanelPart title={t('rule-title')} note={t('rule-note')}>
      {slab.rules.map((rule) => (
        <LaidRule key={rule.id} slab={slab} rule={rule} />
      ))}
      <div className="card">
        <NextRule isFirst={slab.rules.length === 0} />
        <div className="button-row">
          <ActionButton
            id="tool-rule"
            label={t('rule-tap-ends')}
            className={slab.rules.length < 2 ? 'button-main' : ''}
          />
        </div>
      </div>
    </PanelPart>
  )
}
