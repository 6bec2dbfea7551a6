import type { Action } from '../actions/action'
import { ACTIONS } from '../actions/registry'
import { shortcutText } from '../actions/shortcutText'
import { STAGE_NAMES } from '../stages/stageNames'
import { t } from '../text/t'
import { DialogFrame } from './DialogFrame'

const CANVAS_KEYS = ['move', 'coarse', 'fine', 'turn', 'set', 'close', 'back', 'delete'] as const

const WORDS = [
  'live-edge',
  'datum',
  'kerf',
  'blank',
  'oversize',
  'offcut',
  'void',
  'joint',
  'form',
  'pour',
] as const

const KEY_GROUPS = ['edit', 'job', 'look', 'tool', 'help'] as const satisfies readonly Action['group'][]

function KeyGroup({ group }: { readonly group: Action['group'] }) {
  const actions = ACTIONS.filter((action) => action.group === group && action.shortcuts.length > 0)
  return (
    <>
      <h4>{t(`keys-${group}`)}</h4>
      <dl className="figures">
        {actions.map((action) => (
          <div key={action.id}>
            <dt>{t(action.label)}</dt>
            <dd className="keys">
              {action.shortcuts.map((shortcut) => (
                <kbd key={shortcutText(shortcut)}>{shortcutText(shortcut)}</kbd>
              ))}
            </dd>
          </div>
        ))}
      </dl>
    </>
  )
}

/** How the work goes, what the numbers mean, and all keys. */
export function HelpDialog({ onClose }: { readonly onClose: () => void }) {
  return (
    <DialogFrame title={t('help-title')} onClose={onClose}>
      <p>{t('help-lead')}</p>
      <ol className="help-steps">
        {STAGE_NAMES.map((stage) => (
          <li key={stage}>
            <strong>{t(`stage-${stage}`)}</strong> {t(`help-${stage}`)}
          </li>
        ))}
      </ol>
      <h3>{t('help-words')}</h3>
      <dl className="words">
        {WORDS.map((word) => (
          <div key={word}>
            <dt>{t(`word-${word}`)}</dt>
            <dd>{t(`word-${word}-is`)}</dd>
          </div>
        ))}
      </dl>
      <h3>{t('help-lengths')}</h3>
      <p>{t('help-lengths-how')}</p>
      <h3>{t('help-keys')}</h3>
      <p className="note">{t('help-keys-where')}</p>
      {KEY_GROUPS.map((group) => (
        <KeyGroup key={group} group={group} />
      ))}
      <h4>{t('keys-canvas')}</h4>
      <dl className="figures">
        {CANVAS_KEYS.map((name) => (
          <div key={name}>
            <dt>{t(`help-canvas-${name}`)}</dt>
            <dd>
              <kbd>{t(`help-canvas-${name}-key`)}</kbd>
            </dd>
          </div>
        ))}
      </dl>
      <h3>{t('help-care')}</h3>
      <p>{t('help-care-text')}</p>
      <p className="note">{t('help-privacy')}</p>
    </DialogFrame>
  )
}
