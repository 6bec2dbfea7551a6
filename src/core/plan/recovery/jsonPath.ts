export type JsonPath = readonly PropertyKey[]

type JsonObject = Readonly<Record<PropertyKey, unknown>>

const isContainer = (json: unknown): json is JsonObject => typeof json === 'object' && json !== null

/** What lies at the end of the path; undefined where there is nothing. */
export const valueAt = (json: unknown, path: JsonPath): unknown =>
  path.reduce<unknown>((at, key) => (isContainer(at) && Object.hasOwn(at, key) ? at[key] : undefined), json)

/** The JSON with the value at the path replaced; every container on the way is copied, the rest is shared. */
export function withValueAt(json: unknown, path: JsonPath, edit: (value: unknown) => unknown): unknown {
  const [key, ...rest] = path
  if (key === undefined) return edit(json)
  if (!isContainer(json)) return json
  const value = withValueAt(json[key], rest, edit)
  if (Array.isArray(json)) return json.map((item: unknown, index) => (index === key ? value : item))
  return { ...json, [key]: value }
}

/** 'slabs/*\/marks/*' for ['slabs', 0, 'marks', 3]. */
export const patternOf = (path: JsonPath): string =>
  path.map((key) => (typeof key === 'number' ? '*' : String(key))).join('/')
