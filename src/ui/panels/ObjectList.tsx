import { useStore } from 'zustand'
import { sessionStore } from '../../state/sessionStore'
import { useCanvasPositions } from '../canvas'
import { t } from '../text/t'
import { useFormat } from '../text/useFormat'
import { useOption, useSlab } from '../useActive'
import { usePlanResult } from '../usePlanResult'
import { benchObjects, isSameSelection } from './benchObjects'

/** What the canvas shows, as a list: the same selection, for those who do not see or do not use the canvas. */
export function ObjectList() {
  const slab = useSlab()
  const option = useOption()
  const result = usePlanResult()
  const format = useFormat()
  const positions = useCanvasPositions()
  const selection = useStore(sessionStore, (session) => session.selection)
  if (slab === null) return null
  const objects = benchObjects(
    {
      slab,
      slabResult: result.slabs.get(slab.id),
      option,
      optionResult: result.options.get(option?.id ?? ''),
    },
    format,
  )
  return (
    <details className="objects">
      <summary>{t('objects-title', { count: String(objects.length) })}</summary>
      <ul className="object-list">
        {objects.map((object) => {
          const at = positions.get(object.key)
          return (
            <li key={object.key}>
              <button
                type="button"
                data-object={object.key}
                data-screen-x={at?.x}
                data-screen-y={at?.y}
                data-photo-x={at?.photoPx?.[0]}
                data-photo-y={at?.photoPx?.[1]}
                aria-pressed={isSameSelection(selection, object.selection)}
                onClick={() => sessionStore.setState({ selection: object.selection })}
              >
                <span>{object.label}</span>
                <span className="object-where">{object.where}</span>
              </button>
            </li>
          )
        })}
      </ul>
    </details>
  )
}
