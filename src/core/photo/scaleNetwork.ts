import type { Point, PxPoint } from '../geometry'
import type { ScaleInput, TapedDistance } from './scaleInput'

/** Standard deviation of a board's sides as its maker states them, mm: half a millimetre graduation, and square. */
const BOARD_SD_MM = 0.3
export const DEFAULT_TAPE_SD_MM = 0.5
/** Standard deviation of a click that was not refined, px of the photo, when the caller does not say. */
export const DEFAULT_CLICK_SD_PX = 1.5

export interface SeenMark {
  readonly id: string
  readonly heightMm: number
  readonly px: PxPoint
  /** Standard deviation of its click, px. */
  readonly sdPx: number
}

export interface KnownLength {
  /** The taped distance's id, or null for a board's side or diagonal. */
  readonly distanceId: string | null
  readonly a: number
  readonly b: number
  readonly lengthMm: number
  readonly sdMm: number
}

/** The marks that are seen in the photo and every known length between two of them. */
export interface ScaleNetwork {
  readonly marks: readonly SeenMark[]
  readonly lengths: readonly KnownLength[]
}

export function scaleNetwork(input: ScaleInput): ScaleNetwork {
  const clickSdPx = input.clickSdPx ?? DEFAULT_CLICK_SD_PX
  const marks = input.marks.flatMap((mark) => {
    const seen = input.observations.find((o) => o.markId === mark.id)
    return seen ? [{ id: mark.id, heightMm: mark.heightMm, px: seen.atPx, sdPx: seen.sdPx ?? clickSdPx }] : []
  })
  const indexOf = new Map(marks.map((m, i) => [m.id, i]))
  const lengths: KnownLength[] = []
  const addLength = (
    from: string,
    to: string,
    lengthMm: number,
    sdMm: number,
    distanceId: string | null,
  ): void => {
    const a = indexOf.get(from)
    const b = indexOf.get(to)
    if (a !== undefined && b !== undefined && a !== b) lengths.push({ distanceId, a, b, lengthMm, sdMm })
  }
  const tapeSdMm = input.tapeSdMm ?? DEFAULT_TAPE_SD_MM
  for (const d of input.tapedDistances) addLength(...d.markIds, d.lengthMm, tapeSdMm, d.id)
  for (const { cornerIds: c, lengthMm, widthMm } of input.boards) {
    const diagonalMm = Math.hypot(lengthMm, widthMm)
    addLength(c[0], c[1], lengthMm, BOARD_SD_MM, null)
    addLength(c[1], c[2], widthMm, BOARD_SD_MM, null)
    addLength(c[2], c[3], lengthMm, BOARD_SD_MM, null)
    addLength(c[3], c[0], widthMm, BOARD_SD_MM, null)
    addLength(c[0], c[2], diagonalMm, BOARD_SD_MM, null)
    addLength(c[1], c[3], diagonalMm, BOARD_SD_MM, null)
  }
  return { marks, lengths }
}

/** Marks tied to each other by known lengths, directly or through others; larger groups first. */
export function tiedGroups({ marks, lengths }: ScaleNetwork): readonly (readonly number[])[] {
  const groupOf = marks.map((_, i) => i)
  for (const { a, b } of lengths) {
    const [from, to] = [groupOf[a], groupOf[b]]
    groupOf.forEach((group, i) => {
      if (group === from && to !== undefined) groupOf[i] = to
    })
  }
  const groups = new Map<number, number[]>()
  groupOf.forEach((group, i) => groups.set(group, [...(groups.get(group) ?? []), i]))
  return [...groups.values()].sort((p, q) => q.length - p.length)
}

/** The taped distances that this photo cannot use because one of their marks is not seen in it. */
export function unusedDistances(input: ScaleInput, network: ScaleNetwork): readonly TapedDistance[] {
  const used = new Set(network.lengths.map((l) => l.distanceId))
  return input.tapedDistances.filter((d) => !used.has(d.id))
}

/** True when four corners go round without crossing: every corner turns the same way. */
export function goesRound(corners: readonly Point[]): boolean {
  const turns = corners.map((p, i) => {
    const q = corners[(i + 1) % corners.length] ?? p
    const r = corners[(i + 2) % corners.length] ?? p
    return Math.sign((q[0] - p[0]) * (r[1] - q[1]) - (q[1] - p[1]) * (r[0] - q[0]))
  })
  return turns.every((turn) => turn !== 0 && turn === turns[0])
}
