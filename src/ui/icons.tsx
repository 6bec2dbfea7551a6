import type { ReactNode } from 'react'
import type { StageMark } from './stages/stageMarks'

interface Props {
  readonly size?: number
}

const Icon = ({ size = 22, children }: Props & { readonly children: ReactNode }) => (
  <svg
    width={size}
    height={size}
    viewBox="0 0 24 24"
    fill="none"
    stroke="currentColor"
    aria-hidden="true"
    focusable="false"
  >
    {children}
  </svg>
)

/** A full disc with a tick: done. */
const DoneIcon = (props: Props) => (
  <Icon {...props}>
    <circle cx="12" cy="12" r="10" fill="var(--done-edge)" stroke="none" />
    <path d="M7 12.5l3.5 3.5L17 8.5" stroke="#fff" strokeWidth="2.6" />
  </Icon>
)

/** An open ring with a tick: worked out, to be looked at. */
const ReadyIcon = (props: Props) => (
  <Icon {...props}>
    <circle cx="12" cy="12" r="9.2" stroke="var(--done-edge)" strokeWidth="1.8" />
    <path d="M7.5 12.5l3 3L16.5 9" stroke="var(--done-edge)" strokeWidth="2.2" />
  </Icon>
)

/** An empty, broken ring: something is still to be done. */
const NeedsIcon = (props: Props) => (
  <Icon {...props}>
    <circle cx="12" cy="12" r="9" strokeWidth="2.4" strokeDasharray="5 3.07" />
  </Icon>
)

/** A triangle with a question mark: done, but doubtful. */
const DoubtfulIcon = (props: Props) => (
  <Icon {...props}>
    <path
      d="M12 2.5L22.5 21.5h-21z"
      fill="var(--doubt-wash)"
      stroke="var(--doubt-edge)"
      strokeWidth="2"
      strokeLinejoin="round"
    />
    <path d="M9.6 11.2a2.4 2.4 0 1 1 3.4 2.3c-.7.4-1 .8-1 1.7" stroke="var(--ink)" strokeWidth="1.9" />
    <circle cx="12" cy="18.2" r="1.2" fill="var(--ink)" stroke="none" />
  </Icon>
)

/** An octagon with a bar: it does not go. */
export const StopIcon = (props: Props) => (
  <Icon {...props}>
    <path d="M8 2h8l6 6v8l-6 6H8l-6-6V8z" fill="var(--stop-edge)" stroke="none" />
    <path d="M7 12h10" stroke="#fff" strokeWidth="3" />
  </Icon>
)

export function MarkIcon({ mark, size = 22 }: Props & { readonly mark: StageMark }) {
  if (mark === 'done') return <DoneIcon size={size} />
  if (mark === 'ready') return <ReadyIcon size={size} />
  return mark === 'needs' ? <NeedsIcon size={size} /> : <DoubtfulIcon size={size} />
}

export const UndoIcon = (props: Props) => (
  <Icon {...props}>
    <path d="M8 5L3.5 9.5 8 14M4 9.5h9.5a6 6 0 0 1 0 12H9" strokeWidth="2" />
  </Icon>
)

export const RedoIcon = (props: Props) => (
  <Icon {...props}>
    <path d="M16 5l4.5 4.5L16 14M20 9.5h-9.5a6 6 0 0 0 0 12H15" strokeWidth="2" />
  </Icon>
)

export const MenuIcon = (props: Props) => (
  <Icon {...props}>
    <path d="M3 6h18M3 12h18M3 18h18" strokeWidth="2" />
  </Icon>
)

export const GripIcon = ({ isUp }: { readonly isUp: boolean }) => (
  <Icon size={26}>
    <path d={isUp ? 'M5 8l7 7 7-7' : 'M5 15l7-7 7 7'} strokeWidth="2.4" />
    <path d="M8 20.5h8" strokeWidth="2.4" />
  </Icon>
)

/** Our own mark: a slab's wavy edge over the straight edge of a table. */
export const SlabIcon = (props: Props) => (
  <Icon {...props}>
    <path d="M2 9c3-3 5 0 8-1s5-4 8-2 3 2 4 1v11H2z" fill="var(--ink)" stroke="none" />
    <path d="M2 14.5h20" stroke="var(--sheet)" strokeWidth="1.6" strokeDasharray="3 2" />
  </Icon>
)
