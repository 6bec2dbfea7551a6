import { followLumped } from '../../src/core/resin/bucketHeat'
import { autocatalyticLaw, isothermalHours, type CureLaw } from '../../src/core/resin/cureLaw'
import { inertCells } from '../../src/core/resin/heatCell'
import { HeatRun } from '../../src/core/resin/heatRun'
import { LayerStack } from '../../src/core/resin/layerStack'
import { woodConductivityWPerMK } from '../../src/core/resin/pourSetting'
import { GENERIC_CHEMISTRY } from '../../src/core/resin/resinChemistry'
import { number, type Inputs } from './heatMeasures'

/** The rounded gas constant of the rows' own source. */
const GAS_CONSTANT_J_PER_MOL_K = 8.314

const arrhenius = (perS: number, energyJPerMol: number, kelvin: number): number =>
  perS * Math.exp(-energyJPerMol / (GAS_CONSTANT_J_PER_MOL_K * kelvin))

/** Laws of cure of the rows; the pour model's own is `autocatalytic-2`. */
const LAWS: Readonly<Record<string, (inputs: Inputs) => CureLaw>> = {
  'nth-order': (inputs) => (degree) => Math.max(0, 1 - degree) ** number(inputs, 'order'),
  logistic: () => (degree) => degree * (1 - degree),
  kamal: (inputs) => (degree) => (number(inputs, 'k1') + number(inputs, 'k2') * degree) * (1 - degree),
  'three-constants': () => (degree, kelvin) =>
    degree <= 0.3
      ? ((arrhenius(2.101e9, 8.07e4, kelvin) - arrhenius(2.014e9, 7.78e4, kelvin) * degree) *
          (1 - degree) *
          (0.47 - degree)) /
        60
      : (arrhenius(1.96e5, 5.66e4, kelvin) * (1 - degree)) / 60,
  'powers-0.813-2.74': () => (degree, kelvin) =>
    arrhenius(1.53e5, 66.5e3, kelvin) * degree ** 0.813 * (1 - degree) ** 2.74,
  'autocatalytic-2': (inputs) =>
    autocatalyticLaw({
      ...GENERIC_CHEMISTRY,
      referenceRatePerS: number(inputs, 'ratePerS'),
      referenceC: 21,
      startShare: number(inputs, 'startShare'),
    }),
}

/** One cell that cures at a constant temperature: so little heat that it stays where it is. */
function cured(law: CureLaw, startDegree: number, temperatureC: number, timeS: number, step = 0.002): number {
  const cells = inertCells({
    thicknessM: 0.01,
    conductivityWPerMK: 0.2,
    volumetricHeatJPerM3K: 2e6,
    temperatureK: temperatureC + 273.15,
    cells: 1,
  }).map((cell) => ({ ...cell, degree: startDegree, fullRiseK: 1e-9, layer: 0 }))
  const run = new HeatRun(cells, { bottomWPerM2K: 0, topWPerM2K: 0, airK: () => 300 }, law, 0)
  while (run.timeS < timeS) run.advance(timeS, { greatestDegreeStep: step, greatestStepS: timeS / 200 })
  return run.degree[0] ?? NaN
}

/** Degree of cure at constant temperature after a time. */
export function isothermalDegree(inputs: Inputs): number {
  const make = LAWS[String(inputs['law'])]
  if (make === undefined) throw new Error(`no law ${String(inputs['law'])}`)
  const startDegree = number(inputs, 'startDegree')
  return cured(make(inputs), startDegree, number(inputs, 'temperatureC'), number(inputs, 'timeS'))
}

/** K·t at a degree of cure, by the closed form. */
export const closedFormTime = (inputs: Inputs): number =>
  isothermalHours(
    {
      ...GENERIC_CHEMISTRY,
      referenceRatePerS: 1,
      referenceC: 21,
      startShare: number(inputs, 'startShare'),
    },
    number(inputs, 'degree'),
    21,
  ) * 3600

/** Degree at which the closed form's own time is up, by the solver; must come back. */
export function closedFormBack(inputs: Inputs): number {
  const law = LAWS['autocatalytic-2']?.({ ...inputs, ratePerS: 1 })
  if (law === undefined) throw new Error('no law')
  return cured(law, 0, 21, closedFormTime(inputs))
}

/** Rate of a law, 1/s. */
export function lawRate(inputs: Inputs): number {
  const make = LAWS[String(inputs['law'])]
  if (make === undefined) throw new Error(`no law ${String(inputs['law'])}`)
  return make(inputs)(number(inputs, 'degree'), number(inputs, 'temperatureC') + 273.15)
}

/** Semenov's critical number of a well mixed body, by halving on whether the bucket's solver runs away. */
export function semenovCritical(): number {
  const endless = 1e9
  const lossPerS = 1e-3
  const runsAway = (psi: number): boolean => {
    const law: CureLaw = (_degree, kelvin) => ((psi * lossPerS) / endless) * Math.exp(kelvin - 300)
    const body = { law, fullRiseK: endless, lossPerS, roomC: 300 - 273.15, startC: 300 - 273.15 }
    let away = false
    followLumped(body, 60, ({ temperatureC }) => {
      away = temperatureC + 273.15 > 304
      return away
    })
    return away
  }
  let [low, high] = [0.2, 0.6]
  while (high - low > 1e-5) {
    const middle = (low + high) / 2
    if (runsAway(middle)) high = middle
    else low = middle
  }
  return (low + high) / 2
}

const WAIT_HOURS = [15, 40, 200]

/** |stored − released + lost| / released of three layers poured in a day's swing, the second too early. */
export function energyResidual(): number {
  const stack = new LayerStack(
    { ...GENERIC_CHEMISTRY, referenceRatePerS: 5.8e-6, referenceC: 21 },
    {
      room: { kind: 'swing', meanC: 24, swingC: 5, warmestHour: 15 },
      air: 'still',
      beneath: 'board-on-bench',
      woodWPerMK: 0.15,
    },
    8,
  )
  // The balance is that of the time since the last pour: pouring itself brings heat in.
  const residuals = [50, 40, 30].map((depthMm, index) => {
    stack.pour({ depthMm, widthMm: index === 1 ? 80 : null, resinC: 26 })
    stack.runUntil(stack.hour + (WAIT_HOURS[index] ?? 0))
    const { storedJPerM2, releasedJPerM2, lostJPerM2 } = stack.balance
    return Math.abs(storedJPerM2 - releasedJPerM2 + lostJPerM2) / releasedJPerM2
  })
  return Math.max(...residuals)
}

/** Gel of a resin of functionality f with a hardener of functionality g, in balance. */
export const gelDegree = (): number => GENERIC_CHEMISTRY.gelDegree

export const woodConductivity = (inputs: Inputs): number =>
  woodConductivityWPerMK(number(inputs, 'basicGravity'), number(inputs, 'moisturePercent'))
