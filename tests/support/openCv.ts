import { createRequire } from 'node:module'
import type { Point } from '../../src/core/geometry'
import type { Picture } from '../../src/core/trace'

interface Mat {
  readonly rows: number
  readonly data: Uint8Array
  readonly data32S: Int32Array
  delete(): void
}

interface Scissors {
  applyImage(image: Mat): void
  buildMap(from: { readonly x: number; readonly y: number }): void
  getContour(to: { readonly x: number; readonly y: number }, out: Mat): void
  setGradientMagnitudeMaxLimit(limit: number): unknown
  delete(): void
}

interface OpenCv {
  readonly Mat: new (rows?: number, cols?: number, type?: number) => Mat
  readonly segmentation_IntelligentScissorsMB: new () => Scissors
  readonly CV_8UC1: number
  readonly CV_8UC3: number
}

/** The general-purpose vision library that the same published method is checked against. It takes seconds to start. */
export async function openCv(): Promise<OpenCv> {
  const loaded: unknown = await createRequire(import.meta.url)('@techstark/opencv-js')
  if (!isOpenCv(loaded)) throw new Error('the vision library has no scissors: is its version the one pinned?')
  return loaded
}

const isOpenCv = (loaded: unknown): loaded is OpenCv =>
  typeof loaded === 'object' && loaded !== null && 'segmentation_IntelligentScissorsMB' in loaded

/** The library's live wire with the same calls as `EdgeFollower`. */
export class OpenCvFollower {
  readonly #cv: OpenCv
  readonly #tool: Scissors

  constructor(cv: OpenCv, picture: Picture, gradientLimit = 0) {
    this.#cv = cv
    this.#tool = new cv.segmentation_IntelligentScissorsMB()
    if (gradientLimit > 0) this.#tool.setGradientMagnitudeMaxLimit(gradientLimit)
    const { widthPx, heightPx, rgba } = picture
    const image = new cv.Mat(heightPx, widthPx, cv.CV_8UC3)
    for (let at = 0; at < widthPx * heightPx; at++) image.data.set(rgba.subarray(at * 4, at * 4 + 3), at * 3)
    this.#tool.applyImage(image)
    image.delete()
  }

  start([x, y]: Point): void {
    this.#tool.buildMap({ x: Math.floor(x), y: Math.floor(y) })
  }

  wayTo([x, y]: Point): readonly Point[] {
    const out = new this.#cv.Mat()
    this.#tool.getContour({ x: Math.floor(x), y: Math.floor(y) }, out)
    const way = Array.from({ length: out.data32S.length / 2 }, (_, n): Point => [
      (out.data32S[2 * n] ?? 0) + 0.5,
      (out.data32S[2 * n + 1] ?? 0) + 0.5,
    ])
    out.delete()
    return way
  }

  end(): void {
    this.#tool.delete()
  }
}
