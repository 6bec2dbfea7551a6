import type Konva from 'konva/lib/Core'
import { memo } from 'react'
import { Shape } from 'react-konva/lib/ReactKonvaCore'
import type { Brush } from './paint'

interface Props {
  readonly paint: (brush: Brush) => void
}

/** One painting function on a layer; drawn anew when the function is another one. */
export const Painting = memo(function Painting({ paint }: Props) {
  const draw = (context: Konva.Context): void => {
    const brush = context._context
    brush.save()
    paint(brush)
    brush.restore()
  }
  return <Shape sceneFunc={draw} listening={false} perfectDrawEnabled={false} />
})
