import type { InputProblem } from '../../units'
import { patternOf, valueAt, withValueAt, type JsonPath } from './jsonPath'
import { ownerName, partName } from './partNames'
import { REPAIR_RULES, type RepairRule } from './repairRules'

/** Something that could not be kept, as a sentence's key and values. */
export type LostPart = InputProblem

/** As much of a schema issue as repairing needs. */
export interface SchemaIssue {
  readonly code: string
  readonly path: JsonPath
  readonly keys?: readonly string[]
  readonly maximum?: number | bigint
}

export interface Repaired {
  readonly json: unknown
  readonly lost: readonly LostPart[]
}

interface Repair {
  readonly path: JsonPath
  readonly rule: RepairRule
}

function ruleFor(path: JsonPath): Repair | null {
  for (let length = path.length; length > 0; length--) {
    const rule = REPAIR_RULES.get(patternOf(path.slice(0, length)))
    if (rule !== undefined) return { path: path.slice(0, length), rule }
  }
  return null
}

const placeOf = (path: JsonPath): number => path.findLast((key) => typeof key === 'number') ?? 0

const keyOf = (path: JsonPath): string => path.map(String).join('/')

const isUnder = (path: JsonPath, dropped: ReadonlySet<string>): boolean =>
  path.some((_, length) => length > 0 && dropped.has(keyOf(path.slice(0, length))))

/** One repair for each broken place; what lies inside something that goes anyway is not named apart. */
function repairsFor(issues: readonly SchemaIssue[]): readonly Repair[] {
  const found = new Map<string, Repair>()
  for (const issue of issues) {
    const repair = ruleFor(issue.path)
    if (repair !== null) found.set(keyOf(repair.path), repair)
  }
  const all = new Set(found.keys())
  return [...found.values()].filter(({ path }) => !isUnder(path, all))
}

/** Drops by list, so that a list of thousands of broken points is copied once. */
function dropsByList(
  repairs: readonly Repair[],
): readonly { path: JsonPath; gone: ReadonlySet<PropertyKey> }[] {
  const lists = new Map<string, { path: JsonPath; gone: Set<PropertyKey> }>()
  for (const { path, rule } of repairs) {
    const last = path.at(-1)
    if (rule.kind !== 'drop' || last === undefined) continue
    const listPath = path.slice(0, -1)
    const list = lists.get(keyOf(listPath)) ?? { path: listPath, gone: new Set<PropertyKey>() }
    list.gone.add(last)
    lists.set(keyOf(listPath), list)
  }
  // The deepest lists first: their paths hold only while the lists above them are whole.
  return [...lists.values()].toSorted((a, b) => b.path.length - a.path.length)
}

function lostBy(json: unknown, { path, rule }: Repair): LostPart {
  const owner = ownerName(json, path)
  if (rule.kind === 'drop' || rule.code !== undefined) {
    return { code: rule.code ?? '', values: { name: partName(json, path), owner } }
  }
  return { code: 'reset-value', values: { field: String(path.at(-1)), owner } }
}

/** Points of one trace are counted, not listed one by one. */
function counted(lost: readonly LostPart[]): readonly LostPart[] {
  const points = new Map<string, number>()
  for (const { code, values } of lost) {
    const owner = String(values['owner'])
    if (code === 'lost-trace-points') points.set(owner, (points.get(owner) ?? 0) + 1)
  }
  return [
    ...lost.filter(({ code }) => code !== 'lost-trace-points'),
    ...[...points].map(([owner, count]) => ({ code: 'lost-trace-points', values: { count, owner } })),
  ]
}

function withoutUnknownKeys(start: Repaired, issues: readonly SchemaIssue[]): Repaired {
  let { json } = start
  const lost = [...start.lost]
  for (const { path, keys } of issues) {
    if (keys === undefined) continue
    const gone = new Set(keys)
    lost.push({
      code: 'lost-unknown-fields',
      values: { fields: keys.join(', ').slice(0, 200), owner: ownerName(json, path) },
    })
    json = withValueAt(json, path, (value) =>
      Object.fromEntries(Object.entries(Object(value)).filter(([key]) => !gone.has(key))),
    )
  }
  return { json, lost }
}

/** Slabs or options beyond the number that a plan may hold: the first ones stay. */
function shortened(start: Repaired, issues: readonly SchemaIssue[]): Repaired {
  let { json } = start
  const lost = [...start.lost]
  for (const { path, maximum } of issues) {
    const list = valueAt(json, path)
    const most = Number(maximum)
    if (!Array.isArray(list)) continue
    lost.push({ code: 'lost-too-many', values: { list: String(path[0]), count: list.length - most } })
    json = withValueAt(json, path, () => list.slice(0, most))
  }
  return { json, lost }
}

const isTooLongList = ({ code, path }: SchemaIssue): boolean =>
  code === 'too_big' && path.length === 1 && (path[0] === 'slabs' || path[0] === 'options')

const lacksRule = (issue: SchemaIssue): boolean => issue.keys !== undefined || isTooLongList(issue)

/**
 * One round of repair. After it the schema is asked again: a mended place may bring others to light.
 * @returns the JSON with the smallest broken entities dropped or reset, and what was lost, by name
 */
export function repairSchema(json: unknown, issues: readonly SchemaIssue[]): Repaired {
  const repairs = repairsFor(issues.filter((issue) => !lacksRule(issue)))
  const lost = counted(repairs.map((repair) => lostBy(json, repair)))
  let repaired: unknown = json
  for (const { path, rule } of repairs) {
    if (rule.kind !== 'reset') continue
    const parent = valueAt(json, path.slice(0, -1))
    repaired = withValueAt(repaired, path, () => rule.value(parent, placeOf(path)))
  }
  const tidied = withoutUnknownKeys(
    { json: repaired, lost },
    issues.filter(({ keys }) => keys !== undefined),
  )
  const dropped = dropsByList(repairs).reduce<unknown>(
    (at, list) =>
      withValueAt(at, list.path, (items) =>
        Array.isArray(items) ? items.filter((_, index) => !list.gone.has(index)) : items,
      ),
    tidied.json,
  )
  return shortened({ json: dropped, lost: tidied.lost }, issues.filter(isTooLongList))
}
