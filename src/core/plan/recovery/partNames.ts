import { valueAt, type JsonPath } from './jsonPath'

const textAt = (json: unknown, path: JsonPath): string | null => {
  const value = valueAt(json, path)
  return typeof value === 'string' && value !== '' ? value.slice(0, 200) : null
}

const numberInList = (path: JsonPath): string => {
  const last = path.at(-1)
  return typeof last === 'number' ? String(last + 1) : ''
}

function nameOfMark(json: unknown, slabPath: JsonPath, markId: unknown): string {
  const marks = valueAt(json, [...slabPath, 'marks'])
  const found = Array.isArray(marks)
    ? marks.findIndex((_, at) => valueAt(json, [...slabPath, 'marks', at, 'id']) === markId)
    : -1
  return textAt(json, [...slabPath, 'marks', found, 'name']) ?? (typeof markId === 'string' ? markId : '?')
}

/**
 * What the maker calls the thing at a path: its name, the marks it lies between, or its number in the list.
 * Works on JSON that may be broken anywhere.
 */
export function partName(json: unknown, path: JsonPath): string {
  const slabPath = path.slice(0, 2)
  const ends = valueAt(json, [...path, 'markIds'])
  if (Array.isArray(ends)) return ends.map((markId) => nameOfMark(json, slabPath, markId)).join('–')
  const markId = valueAt(json, [...path, 'markId'])
  if (markId !== undefined) return nameOfMark(json, slabPath, markId)
  const pieceId = textAt(json, [...path, 'pieceId'])
  return (
    textAt(json, [...path, 'name']) ?? textAt(json, [...path, 'fileName']) ?? pieceId ?? numberInList(path)
  )
}

/** The slab or option that a path lies in, by name; the plan's name for what lies in neither. */
export const ownerName = (json: unknown, path: JsonPath): string =>
  path.length < 2 ? (textAt(json, ['name']) ?? '') : partName(json, path.slice(0, 2))
