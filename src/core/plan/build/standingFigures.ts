import { feetOf, LEANING_KG, passesDoor, passesLift, passesTurn, seatsRound, stance } from '../../form'
import { overhangSagMm, spanSagMm } from '../../wood'
import type { StandingFigures, WeightFigures } from './buildResult'
import type { BuildTask } from './buildTask'
import { speciesOf } from './woodFigures'

const GRAVITY_M_PER_S2 = 9.80665

/** Whether it stands, who sits at it, how far it sinks, and whether it goes in. Rules: BLD-6. */
export function standingFigures(task: BuildTask, weight: WeightFigures): StandingFigures {
  const { footprint, option } = task
  const { base, placeMm } = option.standing
  const { finishedLengthMm: lengthMm, finishedWidthMm: widthMm } = footprint
  const stands = base.insetLengthMm * 2 < lengthMm && base.insetWidthMm * 2 < widthMm
  const feet = stands ? feetOf(footprint.finished, base) : []
  const top = { massKg: weight.topKg, centre: weight.centre }
  return {
    feet,
    stance: stands ? stance(footprint.finished, feet, top, base.massKg) : null,
    seats: seatsRound(lengthMm, widthMm, placeMm),
    ...sag(task, weight, stands),
    ...wayIn(task),
  }
}

function sag(
  { slab, option, footprint }: BuildTask,
  { topKg }: WeightFigures,
  stands: boolean,
): Pick<StandingFigures, 'middleSagMm' | 'endSagMm'> {
  const elasticityGPa = speciesOf(slab)?.elasticityGPa?.value
  if (!stands || elasticityGPa === undefined) return { middleSagMm: null, endSagMm: null }
  const { finishedLengthMm: lengthMm, finishedWidthMm: widthMm } = footprint
  const beam = { widthMm, thicknessMm: option.table.thicknessMm, elasticityGPa }
  const overhangMm = option.standing.base.insetLengthMm
  const spanMm = lengthMm - 2 * overhangMm
  const load = (partMm: number) => ({
    evenN: (topKg * GRAVITY_M_PER_S2 * partMm) / lengthMm,
    pointN: LEANING_KG * GRAVITY_M_PER_S2,
  })
  return {
    middleSagMm: spanSagMm(beam, spanMm, load(spanMm)),
    endSagMm: overhangMm === 0 ? 0 : overhangSagMm(beam, overhangMm, load(overhangMm)),
  }
}

function wayIn({ option, footprint }: BuildTask): Pick<StandingFigures, 'door' | 'lift' | 'turn'> {
  const { door, lift, turn, roomMm } = option.standing
  const top = {
    lengthMm: footprint.finishedLengthMm + 2 * roomMm,
    widthMm: footprint.finishedWidthMm + 2 * roomMm,
    thicknessMm: option.table.thicknessMm + 2 * roomMm,
  }
  return {
    door: door === null ? null : passesDoor(top, door),
    lift: lift === null ? null : passesLift(top, lift),
    turn: turn === null ? null : passesTurn(top, turn),
  }
}
