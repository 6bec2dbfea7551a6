import { renamePlan } from '../../state/commands'
import { run } from '../../state/run'
import { TextField } from '../fields/TextField'
import { SlabIcon } from '../icons'
import { t } from '../text/t'
import { useShownPlan } from '../useActive'
import { ConflictChoice } from './ConflictChoice'
import { Menu } from './Menu'
import { SavedLine } from './SavedLine'
import { UndoButtons } from './UndoButtons'

/** Name of the plan, undo and redo, whether it is saved, and everything else in a menu. */
export function Header() {
  const plan = useShownPlan()
  return (
    <header className="header">
      <h1 className="wordmark">
        <SlabIcon size={26} />
        <span>{t('app-name')}</span>
      </h1>
      <div className="plan-name">
        <TextField
          label={t('plan-name')}
          labelHidden
          needed
          value={plan.name}
          onChange={(name) => run(renamePlan, { name })}
        />
      </div>
      <div className="header-end">
        <SavedLine />
        <ConflictChoice />
        <UndoButtons />
        <Menu />
      </div>
    </header>
  )
}
