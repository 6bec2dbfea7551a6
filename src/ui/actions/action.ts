import type { PlainKey } from '../text/t'

export interface Shortcut {
  /** As KeyboardEvent.key, letters in lower case. */
  readonly key: string
  /** With Ctrl, or Cmd on a Mac. */
  readonly command?: boolean
  readonly shift?: boolean
}

/** Something the maker can do: one entry feeds toolbar, menu, shortcuts and the help's list. */
export interface Action {
  readonly id: string
  readonly label: PlainKey
  readonly group: 'edit' | 'job' | 'look' | 'tool' | 'help'
  /** The first one is the one that is shown. */
  readonly shortcuts: readonly Shortcut[]
  /** Asked again whenever the plan or the session changes. */
  readonly isEnabled: () => boolean
  /** For what is either on or off. */
  readonly isPressed?: () => boolean
  readonly perform: () => void
}
