import { InvariantError } from '../units'

/**
 * The load that a healthy person may lift in the best of cases: at the waist, close, rarely, both hands, good grip.
 * Revised NIOSH lifting equation, DHHS (NIOSH) 94-110, rev. 9/2021: 23 kg (51 lb). It is for one person; it does not
 * cover team lifts, carrying, stairs or a slab's sharp edge.
 */
export const LOAD_CONSTANT_KG = 23

/**
 * What a team may be thought to lift, as a share of the sum: two of them two thirds, three a half; more than four
 * hardly work together. Guidance on the Manual Handling Operations Regulations (UK), read as quoted.
 */
const TEAM_SHARE: Readonly<Record<number, number>> = { 1: 1, 2: 2 / 3, 3: 1 / 2 }

export interface CarrierShare {
  readonly carriers: number
  readonly kgEach: number
  readonly isAboveConstant: boolean
  /** Load constant × carriers × the team's share; null where the guidance gives none. */
  readonly teamGuideKg: number | null
  readonly isAboveTeamGuide: boolean | null
}

/**
 * A weight shared out among people, against published figures: a screening, never a licence to lift.
 * @throws InvariantError when the mass is negative or not finite
 * Rules: HAND-1.
 */
export function carrierShares(massKg: number): readonly CarrierShare[] {
  if (!(massKg >= 0 && Number.isFinite(massKg))) throw new InvariantError('a mass is known', { massKg })
  return [1, 2, 3, 4].map((carriers) => {
    const share = TEAM_SHARE[carriers]
    const teamGuideKg = share === undefined ? null : LOAD_CONSTANT_KG * carriers * share
    const kgEach = massKg / carriers
    return {
      carriers,
      kgEach,
      isAboveConstant: kgEach > LOAD_CONSTANT_KG,
      teamGuideKg,
      isAboveTeamGuide: teamGuideKg === null ? null : massKg > teamGuideKg,
    }
  })
}
