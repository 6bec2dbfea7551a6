import { EXAMPLE_SHEETS, fitSheet, pourPeak, pourPlan, type PourPlanInput } from '../../../src/core/resin'
import { pourCase, settingAt } from '../../support/pourCase'
import type { Line } from './pourBench'

/** Limits from the issue; the machine may be busy, so the quickest of several runs counts, after warming up. */
const SIMULATION_MS = 5
const PLAN_MS = 150
const RUNS = 12

const CASES: readonly (readonly [string, PourPlanInput])[] = [
  ['54 mm at 21 °C', pourCase(54, settingAt(21))],
  ['100 mm at 25 °C', pourCase(100, settingAt(25))],
  ['60 mm at 35 °C', pourCase(60, settingAt(35))],
  [
    '54 mm, 21 ± 4 °C',
    pourCase(54, {
      ...settingAt(21),
      room: { kind: 'swing', meanC: 21, swingC: 4, warmestHour: 15 },
    }),
  ],
]

/** Least milliseconds over some runs after two to warm up, and a figure of the result so that the work is done. */
function timed(work: () => number): { readonly ms: number; readonly figure: number } {
  let figure = work() + work()
  let ms = Infinity
  for (let run = 0; run < RUNS; run += 1) {
    const from = performance.now()
    figure += work()
    ms = Math.min(ms, performance.now() - from)
  }
  return { ms, figure }
}

const line = (id: string, work: () => number, limitMs: number): Line => {
  const { ms, figure } = timed(work)
  return { kind: 'time', id, ms: Number(ms.toFixed(2)), limitMs, sum: Math.round(figure), ok: ms <= limitMs }
}

/** One simulation, and whole plans with the fit of their sheet. */
export function planTimes(): readonly Line[] {
  const { chemistry } = fitSheet(EXAMPLE_SHEETS.slowCasting, 1080).nominal
  const pour = { layer: { depthMm: 50, widthMm: null, resinC: 21 }, setting: settingAt(21), startHour: 0 }
  return [
    line('one simulation', () => pourPeak(chemistry, pour).coreC, SIMULATION_MS),
    ...CASES.map(([id, input]) =>
      line(`plan: ${id}`, () => pourPlan(input).heat?.layers[0]?.corePeakC ?? NaN, PLAN_MS),
    ),
  ]
}
