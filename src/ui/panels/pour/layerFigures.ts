import type { LayerPlan } from '../../../core/resin'
import { formatNumber } from '../../../core/units'
import { t } from '../../text/t'
import type { Format } from '../../text/useFormat'

export interface Row {
  readonly name: string
  readonly figure: string
}

/** What a figure is told in: the maker's units, and the hours of the plan. */
export interface Words {
  readonly format: Format
  readonly when: (hour: number) => string
}

const HALVES = 2
/** Estimates of hours are told to the half hour: the earlier, the nearest, the later. */
const halfBefore = (hour: number): number => Math.floor(hour * HALVES) / HALVES
const nearestHalf = (hour: number): number => Math.round(hour * HALVES) / HALVES
const halfAfter = (hour: number): number => Math.ceil(hour * HALVES - 1e-9) / HALVES

const row = (name: string, figure: string | null): readonly Row[] =>
  figure === null ? [] : [{ name, figure }]

/** Whole figures of a band; one of them where both read the same. */
export function bandText(band: readonly [number, number], say: (value: number) => string): string {
  const [from, to] = [say(band[0]), say(band[1])]
  return from === to ? from : t('pour-band', { from, to })
}

function partsText(
  parts: readonly [number | null, number | null],
  say: (value: number) => string,
): string | null {
  const [resin, hardener] = parts
  return resin === null || hardener === null
    ? null
    : t('pour-parts', { resin: say(resin), hardener: say(hardener) })
}

/** How much to mix for one pour, in how many batches. */
export function mixRows({ need, batches }: LayerPlan, { format }: Words): readonly Row[] {
  const { parts, massKg } = need
  const mix =
    massKg === null
      ? format.volume(need.mixLitres)
      : `${format.volume(need.mixLitres)}, ${format.mass(massKg)}`
  const each =
    batches.kgEach === null
      ? format.volume(batches.litresEach)
      : `${format.volume(batches.litresEach)}, ${format.mass(batches.kgEach)}`
  const minutes = (value: number): string => t('pour-minutes', { minutes: formatNumber(Math.floor(value)) })
  return [
    { name: t('pour-litres'), figure: mix },
    ...row(t('pour-by-mass'), partsText([parts.resinKg, parts.hardenerKg], format.mass)),
    ...row(t('pour-by-volume'), partsText([parts.resinLitres, parts.hardenerLitres], format.volume)),
    { name: t('pour-batches'), figure: t('pour-batches-of', { count: batches.count, each }) },
    ...row(t('pour-dye-each'), dyeText(batches.dye)),
    ...row(t('pour-batch-time'), batches.workingMinutes === null ? null : minutes(batches.workingMinutes)),
    ...row(t('pour-batch-warm'), batches.plus5Minutes === null ? null : minutes(batches.plus5Minutes)),
  ]
}

/** Drops are counted; a dye by weight is weighed. */
export function dyeText(dye: LayerPlan['batches']['dye']): string | null {
  if (dye === null) return null
  return dye.drops === null
    ? `${formatNumber(dye.grams, { decimals: 1 })} g`
    : t('pour-drops', { drops: dye.drops })
}

/** How hot one pour gets, and what comes when. */
export function heatRows(layer: LayerPlan, isLast: boolean, { format, when }: Words): readonly Row[] {
  const [earliest, latest] = layer.peakBandHours
  const core = t('pour-about', {
    value: format.temperature(layer.corePeakC),
    band: bandText(layer.corePeakBandC, format.temperature),
  })
  return [
    { name: t('pour-core'), figure: core },
    {
      name: t('pour-surface'),
      figure: t('pour-about-plain', { value: format.temperature(layer.surfacePeakC) }),
    },
    { name: t('pour-peak-at'), figure: bandText([halfBefore(earliest), halfAfter(latest)], when) },
    ...row(
      t('pour-gel'),
      layer.gelHour === null ? null : t('pour-about-plain', { value: when(nearestHalf(layer.gelHour)) }),
    ),
    ...row(t('pour-next'), isLast ? null : nextText(layer, when)),
  ]
}

function nextText({ readyHour, windowEndHour }: LayerPlan, when: Words['when']): string | null {
  if (readyHour === null) return null
  const from = when(halfAfter(readyHour))
  return windowEndHour === null || windowEndHour < readyHour
    ? t('pour-next-from', { from })
    : t('pour-next-window', { from, to: when(halfBefore(windowEndHour)) })
}
