import { useStore } from 'zustand'
import type { LengthDisplay } from '../../core/units'
import { programStore } from '../../state/programVersion'
import { sessionStore, setPreferences } from '../../state/sessionStore'
import { CheckField } from '../fields/CheckField'
import { ChoiceGroup } from '../fields/ChoiceGroup'
import { t } from '../text/t'
import { useDisplay } from '../text/useDisplay'

const FRACTIONS = [8, 16, 32] as const
/** What a tape measure in inches shows. */
const USUAL_FRACTION = 16

type InchDisplay = Extract<LengthDisplay, { system: 'inch' }>

const fractionOf = (text: string): InchDisplay['fraction'] =>
  FRACTIONS.find((fraction) => String(fraction) === text) ?? USUAL_FRACTION

/** Millimetres, or inches to a fraction. */
export function UnitsChoice() {
  const display = useDisplay()
  return (
    <>
      <ChoiceGroup<LengthDisplay['system']>
        label={t('units')}
        value={display.system}
        onChange={(system) =>
          setPreferences({ display: system === 'mm' ? { system } : { system, fraction: USUAL_FRACTION } })
        }
        options={[
          { value: 'mm', label: t('units-mm') },
          { value: 'inch', label: t('units-inch') },
        ]}
      />
      {display.system === 'inch' && (
        <ChoiceGroup<string>
          label={t('units-fraction')}
          value={String(display.fraction)}
          onChange={(text) => setPreferences({ display: { system: 'inch', fraction: fractionOf(text) } })}
          options={FRACTIONS.map((fraction) => ({ value: String(fraction), label: `1/${fraction}` }))}
        />
      )}
    </>
  )
}

/** White, black and thick, for work in the sun. */
export function BrightChoice() {
  const bright = useStore(sessionStore, (session) => session.bright)
  return (
    <CheckField
      label={t('bright-mode')}
      checked={bright}
      onChange={(checked) => setPreferences({ bright: checked })}
    />
  )
}

/** Says so once the program no longer needs a network. */
export function KeptLine() {
  const isKept = useStore(programStore, (program) => program.isKept)
  return isKept ? <p className="note">{t('kept-offline')}</p> : null
}
