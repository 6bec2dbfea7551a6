import { ok, type Result } from '../../units'
import { type Search, searchOf, type SearchLedger, type SearchWork } from '../search/searchState'
import { FillColony } from './fillColony'
import { fillGround, type FillGround } from './fillGround'
import type { LaidFill } from './fillLayout'
import type { FillFinding, FillProposal, FillVirtue } from './fillProposal'
import { type FillLimits, fillRoom, type FillTask } from './fillTask'

/** Another proposal is shown if it fills at least this share of what the best one fills. */
const WORTH_SHOWING = 0.6
/** Cost of a piece for one who wants few cuts: so many times as much. */
const FEW_CUTS_COST = 5
/** Every so many rounds go to one of the other proposals. */
const ROUNDS_PER_OTHER = 5
/** It ends by itself after so many looks: far more than anyone waits for. */
const MOST_EVALUATIONS = 3e7

/**
 * How offcuts best fill the gaps of a table: which way up, how turned, where cut.
 * @returns a stepper that goes on finding better ones; its value is the filled area less the cost of each piece, its bound
 *   what no pieces can exceed; or why there is nothing to search
 *
 * Method: distances to wood on a 3 mm grid; an offcut is looked at station by station (10 mm), and wood between two
 * stations that touches nothing is a piece, its ends crosscuts. Starts anywhere and along the sides of the blank are
 * climbed; the most worthy piece is cut and laid, exactly, and what is left of its offcut is wood to lay again. Then some
 * pieces are taken out and laid anew, again and again. Repeatable from the task's seed.
 * Rules: LAY-22 to LAY-26.
 */
export function fillSearch(task: FillTask): Result<Search<FillFinding>> {
  const room = fillRoom(task)
  if (!room.ok) return room
  const ground = fillGround(task, room.value)
  return ok(searchOf((ledger) => fillWork(ground, ledger)))
}

function* fillWork(ground: FillGround, ledger: SearchLedger<FillFinding>): SearchWork {
  const { limits, seed } = ground.task
  ledger.limit(ground.room.reachableMm2 - limits.costPerPieceMm2)
  const spend = (): void => ledger.spend()
  const colony = (own: Partial<FillLimits>, place: number): FillColony =>
    new FillColony(ground, { ...limits, ...own }, seed * 7919 + place, spend)
  const main = colony({}, 1)
  const others = [
    colony({ costPerPieceMm2: FEW_CUTS_COST * limits.costPerPieceMm2 + 2500 }, 2),
    ...(limits.mayTurnOver ? [colony({ mayTurnOver: false }, 3)] : []),
  ]
  const gathered = new GatheredProposals(ground, ledger)
  yield* main.lay(1)
  gathered.offer(main.best)
  yield
  for (let round = 1; ledger.evaluations < MOST_EVALUATIONS; round += 1) {
    const other =
      round % ROUNDS_PER_OTHER === 2
        ? others[Math.floor(round / ROUNDS_PER_OTHER) % others.length]
        : undefined
    const one = other ?? main
    // A round that finds nothing to look at counts, too, so that every step comes to its end.
    ledger.spend()
    yield* one.best.length === 0 ? one.lay(1) : one.again(EFFORTS[round % EFFORTS.length] ?? 1)
    gathered.offer(one.best)
    yield
  }
}

/** How hard a round looks for each piece, in turn: many quick ones, now and then a thorough one. */
const EFFORTS = [1, 1, 0.6, 2, 1, 0.6, 1, 4] as const

/** The proposals found so far that someone might choose. */
class GatheredProposals {
  readonly #ground: FillGround
  readonly #ledger: SearchLedger<FillFinding>
  readonly #chosen = new Map<FillVirtue, FillProposal>()

  constructor(ground: FillGround, ledger: SearchLedger<FillFinding>) {
    this.#ground = ground
    this.#ledger = ledger
  }

  offer(laid: readonly LaidFill[]): void {
    if (laid.length === 0) return
    const proposal = proposalOf(this.#ground, laid)
    const isNews = VIRTUES.map((virtue) => this.#claim(virtue, proposal)).some((claimed) => claimed)
    if (!isNews) return
    const finding = this.#finding()
    if (!this.#ledger.offer(this.#chosen.get('leastResin')?.worthMm2 ?? 0, () => finding)) {
      this.#ledger.incumbent = finding
    }
  }

  #claim(virtue: FillVirtue, proposal: FillProposal): boolean {
    const before = this.#chosen.get(virtue)
    const old = before !== undefined && this.#isWorthShowing(before) ? before : undefined
    if (virtue === 'noneTurnedOver' && proposal.turnedOverCount > 0) return false
    if (old !== undefined && !isBetter[virtue](proposal, old)) return false
    if (virtue === 'fewestCuts' && !this.#isWorthShowing(proposal)) return false
    this.#chosen.set(virtue, proposal)
    return true
  }

  #isWorthShowing({ filledMm2 }: FillProposal): boolean {
    return filledMm2 >= WORTH_SHOWING * (this.#chosen.get('leastResin')?.filledMm2 ?? 0)
  }

  #finding(): FillFinding {
    const proposals: FillProposal[] = []
    for (const virtue of VIRTUES) {
      const chosen = this.#chosen.get(virtue)
      if (chosen === undefined || !this.#isWorthShowing(chosen)) continue
      const same = proposals.findIndex(({ pieces }) => pieces === chosen.pieces)
      const before = proposals[same]
      if (before === undefined) proposals.push({ ...chosen, virtues: [virtue] })
      else proposals[same] = { ...before, virtues: [...before.virtues, virtue] }
    }
    const { voidMm2, reachableMm2 } = this.#ground.room
    return { proposals, voidMm2, reachableMm2 }
  }
}

const VIRTUES: readonly FillVirtue[] = ['leastResin', 'fewestCuts', 'noneTurnedOver']

const isBetter: Readonly<Record<FillVirtue, (a: FillProposal, b: FillProposal) => boolean>> = {
  leastResin: (a, b) => a.worthMm2 > b.worthMm2,
  fewestCuts: (a, b) => a.cutCount < b.cutCount || (a.cutCount === b.cutCount && a.filledMm2 > b.filledMm2),
  noneTurnedOver: (a, b) => a.worthMm2 > b.worthMm2,
}

function proposalOf({ room, task }: FillGround, laid: readonly LaidFill[]): FillProposal {
  const pieces = laid.map(({ piece }) => piece)
  const filledMm2 = pieces.reduce((sum, { areaMm2 }) => sum + areaMm2, 0)
  const used = new Set(laid.map(({ from }) => from))
  const left = laid.flatMap(({ leaves }) => leaves).filter((leaf) => !used.has(leaf))
  const cutKeys = new Set(pieces.map(({ offcutKey }) => offcutKey))
  return {
    virtues: [],
    pieces,
    cutCount: pieces.reduce((sum, { cuts }) => sum + cuts.length, 0),
    turnedOverCount: pieces.filter(({ pose }) => pose.turnedOver).length,
    filledMm2,
    worthMm2: filledMm2 - pieces.length * task.limits.costPerPieceMm2,
    filledShareOfVoid: filledMm2 / room.voidMm2,
    filledShareOfReachable: filledMm2 / room.reachableMm2,
    leftovers: [
      ...task.offcuts
        .filter(({ key }) => !cutKeys.has(key))
        .map(({ key, region }) => ({ offcutKey: key, region })),
      ...left.map(({ offcutKey, region }) => ({ offcutKey, region })),
    ],
  }
}
