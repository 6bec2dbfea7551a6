import { useEffect, useMemo, useState } from 'react'
import { useStore } from 'zustand'
import type { BestPose, CoverTask, KeptTable, LargestShape, LargestTable } from '../../../core/layout'
import {
  bestPlaceTask,
  type CoverSubject,
  doesServe,
  keptSides,
  keptTask,
  largestTask,
  marginTask,
  type Option,
  type Plan,
  type PlanResult,
  type SlabFindings,
  type SlabRow,
  slabRow,
  withPourHours,
} from '../../../core/plan'
import { askCover, cancelCover, type CoverEntry, coverKey, coverStore } from '../../../state/coverDesk'
import { askPour, pourAnswerOf, pourStore } from '../../../state/pourDesk'
import { readyValue } from '../../readyValue'
import { usePlanResult } from '../../usePlanResult'
import { useShownPlan } from '../../useActive'

type Question = 'margin' | 'bestPose' | 'largest' | 'kept'

interface Asked {
  readonly slabId: string
  readonly question: Question
  readonly task: CoverTask
  readonly key: string
}

function questionsOf(subject: CoverSubject): readonly (readonly [Question, CoverTask])[] {
  const keep = keptSides(subject.option)
  if (keep !== null) return [['kept', keptTask(subject, keep)]]
  return [
    ['margin', marginTask(subject)],
    ['bestPose', bestPlaceTask(subject)],
    ['largest', largestTask(subject, 0)],
  ]
}

/** Tasks of all slabs that have a shape: what decides first for each, the rest after it. */
function askedOf(plan: Plan, result: PlanResult, option: Option): readonly Asked[] {
  const asked = plan.slabs.flatMap((slab) => {
    const shape = readyValue(result.slabs.get(slab.id)?.shape)
    if (shape === null || slab.stock.rejected !== null) return []
    return questionsOf({ option, slab, shape }).map(([question, task]) => ({
      slabId: slab.id,
      question,
      task,
      key: coverKey(task),
    }))
  })
  return asked.toSorted((a, b) => Number(a.question === 'largest') - Number(b.question === 'largest'))
}

const isOver = (entry: CoverEntry | undefined): boolean => entry !== undefined && entry.status !== 'running'

function findingsOf(
  asked: readonly Asked[],
  slabId: string,
  entries: ReadonlyMap<string, CoverEntry>,
): SlabFindings {
  const own = asked.filter((each) => each.slabId === slabId)
  const found = <T>(question: Question): T | null => {
    const entry = entries.get(own.find((each) => each.question === question)?.key ?? '')
    // The question tells what its search finds. What is not proved yet would flicker.
    return entry?.status === 'done' ? ((entry.state?.incumbent ?? null) as T | null) : null
  }
  return {
    margin: found<LargestShape>('margin'),
    bestPose: found<BestPose>('bestPose'),
    largest: found<LargestTable>('largest'),
    kept: found<KeptTable>('kept'),
    isDone: own.every(({ key, question }) => question === 'largest' || isOver(entries.get(key))),
  }
}

export interface SlabRows {
  readonly rows: readonly SlabRow[]
  /** Searches that are over, of all. */
  readonly over: number
  readonly all: number
  readonly cancel: () => void
}

interface Kept {
  readonly inputs: readonly unknown[]
  readonly row: SlabRow
}

type RowInput = Parameters<typeof slabRow>[0]

/** Works a row out again only when something that it follows from has changed. */
function rowKeeper(): (input: RowInput) => SlabRow {
  const kept = new Map<string, Kept>()
  return (input) => {
    const { slab, slabResult, option, findings } = input
    const inputs = [
      slab,
      slabResult,
      option.table,
      option.cover,
      option.resin,
      option.room,
      ...Object.values(findings),
    ]
    const before = kept.get(slab.id)
    if (before !== undefined && inputs.every((each, n) => each === before.inputs[n])) return before.row
    const row = slabRow(input)
    kept.set(slab.id, { inputs, row })
    return row
  }
}

/** Pours that were asked for, so that none is asked for again while it is worked out. */
const askedPours = new WeakSet<object>()

/** The pours of the slabs that serve, once it is known which: how long they take is part of the choice. */
function askPours(rows: readonly SlabRow[]): void {
  for (const row of rows) {
    if (row.pourTask === null || askedPours.has(row.pourTask) || !doesServe(row)) continue
    askedPours.add(row.pourTask)
    askPour(`slab/${row.slab.id}`, row.pourTask)
  }
}

/** Every slab of the job with what is known of it, as the searches come in. */
export function useSlabRows(option: Option): SlabRows {
  const plan = useShownPlan()
  const result = usePlanResult()
  const entries = useStore(coverStore, (state) => state.entries)
  useStore(pourStore, (state) => state.answered)
  const [rowFor] = useState(rowKeeper)
  const asked = useMemo(() => askedOf(plan, result, option), [plan, result, option])
  useEffect(() => {
    for (const { key, task } of asked) void askCover(key, task)
  }, [asked])
  const rows = plan.slabs.flatMap((slab) => {
    const slabResult = result.slabs.get(slab.id)
    if (slabResult === undefined) return []
    const findings = findingsOf(asked, slab.id, entries)
    return [rowFor({ plan, option, slab, slabResult, issues: result.issues, findings })]
  })
  const over = asked.filter(({ key }) => isOver(entries.get(key))).length
  const isDone = over === asked.length
  useEffect(() => {
    if (isDone) askPours(rows)
  })
  return {
    rows: rows.map((row) => withPourHours(row, row.pourTask === null ? null : pourAnswerOf(row.pourTask))),
    over,
    all: asked.length,
    cancel: () => asked.forEach(({ key }) => cancelCover(key)),
  }
}
