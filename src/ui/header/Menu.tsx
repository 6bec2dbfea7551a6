import { type FocusEvent, type KeyboardEvent, useRef, useState } from 'react'
import { ActionButton } from '../actions/ActionButton'
import type { ActionId } from '../actions/registry'
import { MenuIcon } from '../icons'
import { t } from '../text/t'
import { BrightChoice, KeptLine, UnitsChoice } from './MenuChoices'

const JOB_ACTIONS: readonly ActionId[] = ['start-own', 'open-file', 'save-file', 'show-jobs', 'show-versions']

/** Everything that is not needed all the time. */
export function Menu() {
  const [isOpen, setOpen] = useState(false)
  const button = useRef<HTMLButtonElement>(null)
  const close = () => setOpen(false)
  /** Before an action is carried out: the focus is back on the menu, from where a dialog may take it. */
  const finish = () => {
    close()
    button.current?.focus()
  }

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || !isOpen) return
    event.stopPropagation()
    finish()
  }
  const onBlur = (event: FocusEvent<HTMLDivElement>) => {
    const next = event.relatedTarget
    if (next !== null && !event.currentTarget.contains(next)) close()
  }

  return (
    <div className="menu" role="presentation" onKeyDown={onKeyDown} onBlur={onBlur}>
      <button
        ref={button}
        type="button"
        className="button"
        aria-label={t('menu')}
        aria-expanded={isOpen}
        aria-controls="menu-panel"
        onClick={() => setOpen(!isOpen)}
      >
        <MenuIcon />
        <span className="menu-word">{t('menu')}</span>
      </button>
      {isOpen && (
        <>
          <div className="menu-behind" onClick={close} aria-hidden="true" />
          <div id="menu-panel" className="menu-panel">
            <section className="menu-part" aria-label={t('menu-jobs')}>
              {JOB_ACTIONS.map((id) => (
                <ActionButton key={id} id={id} showsShortcut onDone={finish} />
              ))}
            </section>
            <section className="menu-part" aria-label={t('menu-demos')}>
              <h2>{t('menu-demos')}</h2>
              <ActionButton id="demo-library-table" onDone={finish} />
              <ActionButton id="demo-kitchen-table" onDone={finish} />
            </section>
            <section className="menu-part" aria-label={t('menu-look')}>
              <UnitsChoice />
              <BrightChoice />
            </section>
            <section className="menu-part" aria-label={t('menu-help')}>
              <ActionButton id="show-help" showsShortcut onDone={finish} />
              <KeptLine />
            </section>
          </div>
        </>
      )}
    </div>
  )
}
