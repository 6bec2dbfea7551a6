import Konva from 'konva/lib/Core'
import { createContext, type ReactNode, useContext, useEffect, useState } from 'react'
import type { Brush } from './paint'

const StageContext = createContext<Konva.Stage | null>(null)

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
  const [container, setContainer] = useState<HTMLDivElement | null>(null)
  const [stage, setStage] = useState<Konva.Stage | null>(null)
  useEffect(() => {
    if (container === null) return
    const made = new Konva.Stage({ container, listening: false })
    setStage(made)
    return () => {
      setStage(null)
      made.destroy()
    }
  }, [container])
  useEffect(() => {
    stage?.size({ width, height })
  }, [stage, width, height])
  return (
    <div ref={setContainer}>
      <StageContext.Provider value={stage}>{stage !== null && children}</StageContext.Provider>
    </div>
  )
}

interface LayerProps {
  readonly paint: (brush: Brush) => void
}

/** One layer, above the layers before it; drawn anew when its painting function is another one. */
export function PaintLayer({ paint }: LayerProps) {
  const stage = useContext(StageContext)
  const [shape, setShape] = useState<Konva.Shape | null>(null)
  useEffect(() => {
    if (stage === null) return
    const layer = new Konva.Layer({ listening: false })
    const made = new Konva.Shape({ listening: false, perfectDrawEnabled: false })
    layer.add(made)
    stage.add(layer)
    setShape(made)
    return () => {
      setShape(null)
      layer.destroy()
    }
  }, [stage])
  useEffect(() => {
    shape?.sceneFunc((context) => {
      const brush = context._context
      brush.save()
      paint(brush)
      brush.restore()
    })
  }, [shape, paint])
  return null
}
