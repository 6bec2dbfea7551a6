import { Layer } from 'konva/lib/Layer'
import { Shape } from 'konva/lib/Shape'
import { Stage } from 'konva/lib/Stage'
import { createContext, type ReactNode, useCallback, useContext, useEffect, useState } from 'react'
import type { Brush } from './paint'

const StageContext = createContext<Stage | null>(null)

interface StageProps {
  readonly width: number
  readonly height: number
  readonly children: ReactNode
}

/**
 * A Konva stage for layers that paint themselves. Driven directly: the React binding for Konva would bring a second
 * reconciler to the first load, for three kinds of nodes.
 */
export function PaintStage({ width, height, children }: StageProps) {
  const [stage, setStage] = useState<Stage | null>(null)
  const holdStage = useCallback((container: HTMLDivElement) => {
    const made = new Stage({ container, listening: false })
    setStage(made)
    return () => {
      setStage(null)
      made.destroy()
    }
  }, [])
  useEffect(() => {
    stage?.size({ width, height })
  }, [stage, width, height])
  return (
    <div ref={holdStage}>
      <StageContext.Provider value={stage}>{stage !== null && children}</StageContext.Provider>
    </div>
  )
}

interface LayerProps {
  readonly paint: (brush: Brush) => void
}

function makeLayer(): { readonly layer: Layer; readonly shape: Shape } {
  const layer = new Layer({ listening: false })
  const shape = new Shape({ listening: false, perfectDrawEnabled: false })
  layer.add(shape)
  return { layer, shape }
}

/** One layer, above the layers before it; drawn anew when its painting function is another one. */
export function PaintLayer({ paint }: LayerProps) {
  const stage = useContext(StageContext)
  const [{ layer, shape }] = useState(makeLayer)
  useEffect(() => {
    stage?.add(layer)
    return () => {
      layer.remove()
    }
  }, [stage, layer])
  useEffect(() => {
    shape.sceneFunc((context) => {
      const brush = context._context
      brush.save()
      paint(brush)
      brush.restore()
    })
  }, [shape, paint])
  return null
}
