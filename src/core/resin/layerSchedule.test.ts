import { describe, expect, it } from 'vitest'
import { EXAMPLE_SHEETS } from './exampleSheets'
import {
  COOL_WITHIN_K,
  scheduleLayers,
  traceLayers,
  type ScheduleCase,
  type ScheduledLayer,
} from './layerSchedule'
import { fitSheet } from './sheetFit'
import { isAwake } from './wakingHours'

const fit = fitSheet(EXAMPLE_SHEETS.slowCasting, 1080)
const wish: ScheduleCase = {
  fit,
  setting: { room: { kind: 'steady', roomC: 21 }, air: 'still', beneath: 'board-on-bench', woodWPerMK: 0.15 },
  resinC: null,
  firstStartHour: 8,
  day: { fromHour: 7, toHour: 22 },
  recoatLeastHours: null,
  recoatGreatestHours: null,
  demouldHours: null,
  workHours: 1,
}
const layer: ScheduledLayer = {
  hotDepthMm: 40,
  widestMm: 300,
  slowDepthMm: 40,
  narrowestMm: 300,
  startHour: null,
}

describe('scheduleLayers', () => {
  it('RES-18 the next layer waits until the surface has set and the layer below is near the room', () => {
    const { layers } = scheduleLayers(wish, [layer, layer])
    const [first, second] = layers
    expect(first?.readyHour).toBe(Math.max(first?.gelHour ?? NaN, first?.coolHour ?? NaN))
    expect(second?.startHour).toBeGreaterThanOrEqual(first?.readyHour ?? NaN)
    expect(second?.belowC).toBeLessThanOrEqual(21 + COOL_WITHIN_K)
    expect(second?.belowIsSoft).toBe(false)
    expect(isAwake(second?.startHour ?? NaN, wish.day)).toBe(true)
  })

  it('RES-18 a narrow gap sets later than a wide one, and the next pour waits for it', () => {
    const wide = scheduleLayers(wish, [layer, layer])
    const both = scheduleLayers(
      wish,
      [layer, { ...layer, narrowestMm: 20 }].map((one) => ({ ...one, narrowestMm: 20 })),
    )
    expect(both.layers[0]?.gelHour).toBeGreaterThan((wide.layers[0]?.gelHour ?? NaN) + 10)
    expect(both.layers[1]?.startHour).toBeGreaterThan(wide.layers[1]?.startHour ?? NaN)
    expect(both.demouldHour).toBeGreaterThan(wide.demouldHour ?? NaN)
    expect(both.flattenHour).toBeGreaterThan(both.demouldHour ?? NaN)
  })

  it('RES-18 the sheet’s least time is kept, and its window is told', () => {
    const [first] = scheduleLayers({ ...wish, recoatLeastHours: 90, recoatGreatestHours: 120 }, [
      layer,
      layer,
    ]).layers
    expect(first?.readyHour).toBe(98)
    expect(first?.windowEndHour).toBe(128)
  })

  it('RES-18 a start set by hand is kept, hot and soft as the layer below may be', () => {
    const { layers } = scheduleLayers(wish, [layer, { ...layer, startHour: 22 }])
    expect(layers[1]).toMatchObject({ startHour: 22, belowIsSoft: true })
    expect(layers[1]?.belowC).toBeGreaterThan(35)
    expect(layers[0]).toMatchObject({ gelHour: null, readyHour: null })
  })

  it('RES-18 a start set before the layer below is put after it', () => {
    expect(scheduleLayers(wish, [layer, { ...layer, startHour: 2 }]).layers[1]?.startHour).toBe(8.5)
  })

  it('RES-18 the sheet’s hours to demould rule where they are later', () => {
    const own = scheduleLayers(wish, [layer]).demouldHour ?? NaN
    const sheet = scheduleLayers({ ...wish, demouldHours: 400 }, [layer]).demouldHour ?? NaN
    expect(own).toBeLessThan(300)
    expect(sheet).toBeGreaterThanOrEqual(408)
  })

  it('RES-6 resin that is not told otherwise is as warm as the room when it is poured', () => {
    const swing = {
      ...wish,
      setting: { ...wish.setting, room: { kind: 'swing', meanC: 21, swingC: 4, warmestHour: 15 } },
    } as const
    const { trace } = scheduleLayers({ ...swing, firstStartHour: 15 }, [layer])
    expect(trace.coresC[0]).toBeCloseTo(25, 9)
    expect(scheduleLayers({ ...swing, resinC: 23 }, [layer]).trace.coresC[0]).toBeCloseTo(23, 9)
  })

  it('RES-12 the same pours with the same chemistry give the same line; the band gives others', () => {
    const schedule = scheduleLayers(wish, [layer, layer])
    const starts = schedule.layers.map(({ startHour }) => startHour)
    const again = traceLayers(fit.nominal, wish, [layer, layer], starts, schedule.endHour)
    const peaks = again.peaks.map(({ coreC }) => coreC)
    schedule.layers.forEach(({ peak }, index) => expect(peaks[index]).toBeCloseTo(peak.coreC, 0))
    const high = traceLayers(fit.high, wish, [layer, layer], starts, schedule.endHour)
    expect(Math.abs((high.peaks[0]?.coreHour ?? NaN) - (again.peaks[0]?.coreHour ?? NaN))).toBeGreaterThan(
      0.5,
    )
  })
})
