import { type RefObject, useEffect, useMemo, useRef, useState } from 'react'
import type { Plan, PlanResult } from '../../core/plan'
import { fileNameOf } from '../../state/savePlanFile'
import { ChoiceGroup } from '../fields/ChoiceGroup'
import { CheckField } from '../fields/CheckField'
import { handOut } from '../files/handOut'
import { PanelPart } from '../panels/PanelPart'
import { t } from '../text/t'
import { useOption, useShownPlan } from '../useActive'
import { usePlanResult } from '../usePlanResult'
import { paintPicture, pictureSize } from './paintPicture'
import { type PictureScene, pictureScene, slabsShown } from './pictureScene'
import { RESIN_KINDS, type ResinKind, type ResinLook } from './resinLook'
import { slabGrain, type SlabGrain } from './slabGrain'

const SCREEN_PX = 1400
/** 340 mm wide at 300 dots to the inch. */
const PRINT_PX = 4000
const MOST_OPTIONS = 3

interface Wanted {
  readonly plan: Plan
  readonly result: PlanResult
  readonly scenes: readonly PictureScene[]
  readonly look: ResinLook
}

/** Draws the picture on a canvas; nothing is left of the slabs' bitmaps afterwards. */
async function draw(
  canvas: HTMLCanvasElement,
  { plan, result, scenes, look }: Wanted,
  widthPx: number,
  signal: AbortSignal,
): Promise<void> {
  const size = pictureSize(scenes, widthPx)
  const grains = new Map<string, SlabGrain>()
  for (const shown of slabsShown(scenes, plan.slabs)) {
    const grain = await slabGrain(shown, result, 1 / size.pxPerMm, signal)
    if (grain !== null) grains.set(shown.slab.id, grain)
  }
  if (!signal.aborted) {
    const words = { title: plan.name, impression: t('picture-impression') }
    paintPicture(canvas, scenes, { grains, look, words, size })
  }
  for (const { bitmap } of grains.values()) bitmap.close()
}

const isAbort = (error: unknown): boolean => error instanceof Error && error.name === 'AbortError'

function useWanted(together: boolean, kind: ResinKind, colour: string): Wanted {
  const plan = useShownPlan()
  const result = usePlanResult()
  const option = useOption()
  return useMemo(() => {
    const options = together
      ? plan.options.slice(0, MOST_OPTIONS)
      : plan.options.filter((one) => one === option)
    const scenes = options.flatMap((one) => pictureScene(one, result) ?? [])
    return { plan, result, scenes, look: { kind, colour } }
  }, [plan, result, option, together, kind, colour])
}

type Standing = 'drawing' | 'drawn' | 'failed'

/** Redraws a little after the last change, so that a run of changes draws once. */
function useDrawn(wanted: Wanted): {
  readonly canvas: RefObject<HTMLCanvasElement | null>
  readonly standing: Standing
} {
  const canvas = useRef<HTMLCanvasElement>(null)
  const [standing, setStanding] = useState<Standing>('drawing')
  useEffect(() => {
    const stop = new AbortController()
    const timer = setTimeout(() => {
      if (canvas.current === null) return
      setStanding('drawing')
      draw(canvas.current, wanted, SCREEN_PX, stop.signal).then(
        () => stop.signal.aborted || setStanding('drawn'),
        (error: unknown) => isAbort(error) || setStanding('failed'),
      )
    }, 60)
    return () => {
      clearTimeout(timer)
      stop.abort()
    }
  }, [wanted])
  return { canvas, standing }
}

async function handOutPicture(wanted: Wanted, widthPx: number, ending: string): Promise<void> {
  const canvas = document.createElement('canvas')
  await draw(canvas, wanted, widthPx, new AbortController().signal)
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'))
  if (blob !== null) handOut(blob, fileNameOf(wanted.plan.name).replace(/\.waneline$/, ending))
}

/** The finished top as it will look, for the client. */
export function ClientPicture() {
  const [kind, setKind] = useState<ResinKind>('tinted')
  const [colour, setColour] = useState('#1f4a5c')
  const [together, setTogether] = useState(false)
  const wanted = useWanted(together, kind, colour)
  const { canvas, standing } = useDrawn(wanted)
  if (wanted.scenes.length === 0) return null
  return (
    <PanelPart title={t('picture')} note={t('picture-impression')}>
      <ChoiceGroup<ResinKind>
        label={t('picture-resin')}
        value={kind}
        onChange={setKind}
        options={RESIN_KINDS.map((value) => ({ value, label: t(`picture-${value}`) }))}
      />
      {kind !== 'clear' && (
        <label className="field">
          <span className="field-label">{t('picture-colour')}</span>
          <input type="color" value={colour} onChange={(event) => setColour(event.currentTarget.value)} />
        </label>
      )}
      {wanted.plan.options.length > 1 && (
        <CheckField label={t('picture-together')} checked={together} onChange={setTogether} />
      )}
      <canvas
        ref={canvas}
        className="client-picture"
        role="img"
        aria-label={t('picture')}
        data-standing={standing}
      />
      {standing === 'failed' && <p role="status">{t('picture-failed')}</p>}
      <div className="button-row">
        <button
          type="button"
          className="button"
          onClick={() => void handOutPicture(wanted, SCREEN_PX, '-picture.png')}
        >
          {t('picture-screen')}
        </button>
        <button
          type="button"
          className="button"
          onClick={() => void handOutPicture(wanted, PRINT_PX, '-picture-print.png')}
        >
          {t('picture-print')}
        </button>
      </div>
    </PanelPart>
  )
}
