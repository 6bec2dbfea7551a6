import { t } from '../text/t'

interface Props<T> {
  /** The maker's own, newest first. */
  readonly own: readonly T[]
  readonly sizeText: (size: T) => string
  /** What is typed so far; null: not whole yet. */
  readonly typed: T | null
  readonly onTake: (size: T) => void
  readonly onChange: (own: readonly T[]) => void
}

/** One's own references: offered first, kept once, and forgotten when asked. */
export function OwnReferences<T>({ own, sizeText, typed, onTake, onChange }: Props<T>) {
  const isOwn = typed !== null && own.some((size) => sizeText(size) === sizeText(typed))
  return (
    <>
      {own.map((size) => (
        <div key={sizeText(size)} className="button-row">
          <button type="button" className="button" onClick={() => onTake(size)}>
            {t('own-reference', { size: sizeText(size) })}
          </button>
          <button
            type="button"
            className="button button-small"
            aria-label={t('own-forget', { size: sizeText(size) })}
            onClick={() => onChange(own.filter((other) => other !== size))}
          >
            {t('own-forget-short')}
          </button>
        </div>
      ))}
      {typed !== null && !isOwn && (
        <div className="button-row">
          <button type="button" className="button" onClick={() => onChange([typed, ...own])}>
            {t('own-keep')}
          </button>
        </div>
      )}
    </>
  )
}
