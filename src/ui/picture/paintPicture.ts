import { paintTop } from './paintTop'
import type { PictureScene } from './pictureScene'
import type { ResinLook } from './resinLook'
import type { SlabGrain } from './slabGrain'

export interface PictureWords {
  readonly title: string
  readonly impression: string
}

export interface PictureSize {
  readonly widthPx: number
  readonly heightPx: number
  readonly pxPerMm: number
}

const GROUND = '#efece6'
/** Shares of the width: border, words. */
const BORDER = 0.04
const WORDS = 0.022

/** Options stand one below the other when tops are long, as they mostly are; px to the mm follow from the width. */
export function pictureSize(scenes: readonly PictureScene[], widthPx: number): PictureSize {
  const longest = Math.max(...scenes.map(({ bounds }) => bounds.maxX - bounds.minX))
  const pxPerMm = (widthPx * (1 - 2 * BORDER)) / longest
  const tops = scenes.reduce((sum, { bounds }) => sum + (bounds.maxY - bounds.minY) * pxPerMm, 0)
  const between = widthPx * (BORDER + 1.6 * WORDS)
  const heightPx = Math.round(tops + scenes.length * between + widthPx * (2 * BORDER + 2 * WORDS))
  return { widthPx, heightPx, pxPerMm }
}

/** The tops of up to three options at one scale, with their names and the word that this is an impression. */
export function paintPicture(
  canvas: HTMLCanvasElement,
  scenes: readonly PictureScene[],
  {
    grains,
    look,
    words,
    size,
  }: {
    readonly grains: ReadonlyMap<string, SlabGrain>
    readonly look: ResinLook
    readonly words: PictureWords
    readonly size: PictureSize
  },
): void {
  const { widthPx, heightPx, pxPerMm } = size
  canvas.width = widthPx
  canvas.height = heightPx
  const pen = canvas.getContext('2d')
  if (pen === null) return
  const [border, letter] = [widthPx * BORDER, widthPx * WORDS]
  pen.fillStyle = GROUND
  pen.fillRect(0, 0, widthPx, heightPx)
  pen.fillStyle = '#2b2723'
  pen.textBaseline = 'top'
  pen.font = `600 ${letter}px "Source Sans 3", sans-serif`
  pen.fillText(words.title, border, border * 0.6, widthPx - 2 * border)
  let y = border * 0.6 + 2 * letter
  for (const scene of scenes) {
    pen.fillStyle = '#2b2723'
    pen.font = `400 ${letter * 0.8}px "Source Sans 3", sans-serif`
    if (scenes.length > 1) pen.fillText(scene.name, border, y, widthPx - 2 * border)
    y += 1.6 * letter
    paintTop(pen, scene, { grains, look, place: { xPx: border, yPx: y, pxPerMm } })
    y += (scene.bounds.maxY - scene.bounds.minY) * pxPerMm + border
  }
  pen.fillStyle = '#4a443d'
  pen.font = `400 ${letter * 0.7}px "Source Sans 3", sans-serif`
  pen.fillText(words.impression, border, heightPx - border * 0.4 - letter, widthPx - 2 * border)
}
