import { memo, useCallback } from 'react'
import { useStore } from 'zustand'
import { tracingOn, tracingStore } from '../../../state/tracingStore'
import { useDisplay } from '../../text/useDisplay'
import { canvasStore, toolInHand } from '../canvasStore'
import type { Ink } from '../ink'
import { pictureStore } from '../photo/pictureStore'
import type { Scene } from '../tools/toolTypes'
import type { Scenes } from '../useScenes'
import type { Brush } from './paint'
import { paintHands } from './paintHands'
import { paintMarks } from './paintMarks'
import { paintOption } from './paintOption'
import { paintPhoto } from './paintPhoto'
import { useProposalPainter } from './paintProposal'
import { paintSlab } from './paintSlab'
import { paintTableFill, paintTableGround } from './paintTable'
import { paintTracing } from './paintTracing'
import { paintWeak } from './paintWeak'
import { PaintLayer } from './PaintStage'

/** What a running gesture changes: it is drawn on the layer of the hands, and the layers below rest meanwhile. */
export interface Moving {
  readonly slab: boolean
  readonly option: boolean
}

const STILL: Moving = { slab: false, option: false }

const movingOf = ({ settled, shown }: Scenes): Moving =>
  shown === settled
    ? STILL
    : { slab: shown.slab !== settled.slab, option: shown.optionResult !== settled.optionResult }

interface LayerProps {
  readonly scene: Scene
  readonly ink: Ink
}

/** Bottom layer: bitmaps only. */
const PhotoLayer = memo(function PhotoLayer({ scene, ink }: LayerProps) {
  const pictures = useStore(pictureStore)
  const paint = useCallback(
    (brush: Brush) => {
      paintPhoto(brush, scene, pictures)
      paintTableGround(brush, scene, ink, pictures)
    },
    [scene, ink, pictures],
  )
  return <PaintLayer paint={paint} />
})

interface StillProps extends LayerProps {
  readonly slabMoves: boolean
  readonly optionMoves: boolean
}

/** Slab, voids, cuts, table: all that is settled. */
const WorkLayer = memo(function WorkLayer({ scene, ink, slabMoves, optionMoves }: StillProps) {
  const paintOptionPart = useOptionPainter(scene, ink)
  const paint = useCallback(
    (brush: Brush) => {
      if (!optionMoves) paintOptionPart(brush)
      if (!slabMoves) paintSlab(brush, scene, ink)
      paintWeak(brush, scene, ink)
    },
    [scene, ink, slabMoves, optionMoves, paintOptionPart],
  )
  return <PaintLayer paint={paint} />
})

function useOptionPainter(scene: Scene, ink: Ink): (brush: Brush) => void {
  const pictures = useStore(pictureStore)
  return useCallback(
    (brush: Brush) => {
      paintOption(brush, scene, ink)
      paintTableFill(brush, scene, ink, pictures)
    },
    [scene, ink, pictures],
  )
}

/** Marks, dimensions, plates. */
const MarksLayer = memo(function MarksLayer({ scene, ink, slabMoves, optionMoves }: StillProps) {
  const display = useDisplay()
  const paint = useCallback(
    (brush: Brush) => {
      if (!slabMoves && !optionMoves) paintMarks(brush, scene, ink, display)
    },
    [scene, ink, display, slabMoves, optionMoves],
  )
  return <PaintLayer paint={paint} />
})

/** Handles, selection, and whatever a running gesture moves: the only layer redrawn while dragging. */
function HandsLayer({ scene, ink, slabMoves, optionMoves }: StillProps) {
  const display = useDisplay()
  const crosshair = useStore(canvasStore, (state) => state.crosshair)
  const hand = useStore(canvasStore, (state) => toolInHand(state, scene.slab?.id ?? null, scene.tool))
  const tracing = useStore(tracingStore, (state) => tracingOn(state, scene.photo?.id))
  const paintOptionPart = useOptionPainter(scene, ink)
  const paintProposal = useProposalPainter(scene, ink)
  const paint = useCallback(
    (brush: Brush) => {
      if (optionMoves) paintOptionPart(brush)
      if (slabMoves) paintSlab(brush, scene, ink)
      if (slabMoves || optionMoves) paintMarks(brush, scene, ink, display)
      paintProposal(brush)
      paintTracing(brush, scene, ink, tracing, hand)
      paintHands(brush, scene, ink, { unfinished: hand.unfinished, aim: hand.aim, crosshair })
    },
    [scene, ink, display, slabMoves, optionMoves, hand, crosshair, tracing, paintOptionPart, paintProposal],
  )
  return <PaintLayer paint={paint} />
}

interface Props extends Scenes {
  readonly ink: Ink
}

/** The four layers, bottom up. */
export function CanvasLayers({ settled, shown, ink }: Props) {
  const { slab: slabMoves, option: optionMoves } = movingOf({ settled, shown })
  const moving = { slabMoves, optionMoves }
  return (
    <>
      <PhotoLayer scene={settled} ink={ink} />
      <WorkLayer scene={settled} ink={ink} {...moving} />
      <MarksLayer scene={settled} ink={ink} {...moving} />
      <HandsLayer scene={shown} ink={ink} {...moving} />
    </>
  )
}
