import { t } from '../text/t'
import type { Shortcut } from './action'

const NAMED_KEYS: Readonly<Record<string, 'key-escape' | 'key-enter' | 'key-delete' | 'key-space'>> = {
  Escape: 'key-escape',
  Enter: 'key-enter',
  Delete: 'key-delete',
  ' ': 'key-space',
}

const isApple = (): boolean => /Mac|iPhone|iPad/.test(globalThis.navigator?.userAgent ?? '')

/** A shortcut as it is written on keys: `Ctrl+Shift+Z`. */
export function shortcutText({ key, command, shift }: Shortcut): string {
  const named = NAMED_KEYS[key]
  const parts = [
    command === true ? t(isApple() ? 'key-command' : 'key-control') : null,
    shift === true ? t('key-shift') : null,
    named === undefined ? key.toUpperCase() : t(named),
  ]
  return parts.filter((part) => part !== null).join('+')
}
