import { useStore } from 'zustand'
import { SHEET_KINDS, type SheetKind } from '../../../core/plan'
import { sessionStore, setPreferences } from '../../../state/sessionStore'
import { CheckField } from '../../fields/CheckField'
import { t } from '../../text/t'

/** Which sheets of the bench set are printed. */
export function SheetChoice() {
  const chosen = useStore(sessionStore, (session) => session.sheets)
  const set = (kind: SheetKind, isIn: boolean) =>
    setPreferences({ sheets: SHEET_KINDS.filter((one) => (one === kind ? isIn : chosen.includes(one))) })
  return (
    <fieldset className="sheet-choice">
      <legend className="field-label">{t('sheets-chosen')}</legend>
      {SHEET_KINDS.map((kind) => (
        <CheckField
          key={kind}
          label={t(`sheet-kind-${kind}`)}
          checked={chosen.includes(kind)}
          onChange={(isIn) => set(kind, isIn)}
        />
      ))}
    </fieldset>
  )
}
