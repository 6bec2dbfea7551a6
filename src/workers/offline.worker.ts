// Makes the program work without a network after the first visit. The build replaces the list of files and puts this
// beside index.html under a name that never changes: offline.js. It imports nothing.

declare const self: ServiceWorkerGlobalScope

interface BuiltFile {
  /** Relative to this file. */
  readonly path: string
  /** SHA-256 of its bytes, as hexadecimal digits. */
  readonly sha256: string
}

/** Written by the build: every file of the program. */
declare const BUILT_FILES: readonly BuiltFile[]
/** Written by the build: changes when any file does. */
declare const BUILT_VERSION: string

const FAMILY = 'waneline-program-'
const CACHE = `${FAMILY}${BUILT_VERSION}`

/** A server may say that its answer differs by language or packing; here every file has one form only. */
const ANY_FORM = { ignoreVary: true } as const

const addressOf = (path: string): string => new URL(path, self.location.href).href

const hexOf = (bytes: ArrayBuffer): string =>
  Array.from(new Uint8Array(bytes), (byte) => byte.toString(16).padStart(2, '0')).join('')

async function isWhole(response: Response, { sha256 }: BuiltFile): Promise<boolean> {
  return hexOf(await crypto.subtle.digest('SHA-256', await response.clone().arrayBuffer())) === sha256
}

/**
 * Some hosts answer a missing file with their front page, and one that is just being updated mixes old and new: only
 * bytes that are those of the build are kept.
 */
async function fetchFile(file: BuiltFile): Promise<Response> {
  const address = addressOf(file.path)
  for (const cache of ['default', 'reload'] as const) {
    const response = await fetch(address, { cache, credentials: 'same-origin' })
    if (response.ok && (await isWhole(response, file))) return response
  }
  throw new Error(`${file.path} is not the file that was built`)
}

/** From an older version if it is the same there, else from the network. */
async function keepFile(cache: Cache, file: BuiltFile): Promise<void> {
  const address = addressOf(file.path)
  const before = await caches.match(address, ANY_FORM)
  const isSame = before !== undefined && (await isWhole(before, file))
  await cache.put(address, isSame ? before : await fetchFile(file))
}

/** All files or none: what stopped half-way goes away again. */
async function keepAll(): Promise<void> {
  const cache = await caches.open(CACHE)
  try {
    await Promise.all(BUILT_FILES.map((file) => keepFile(cache, file)))
  } catch (error) {
    await caches.delete(CACHE)
    throw error
  }
}

/** The version before stays as long as this one: a tab that still shows it may yet ask for a part of it. */
async function dropOldVersions(): Promise<void> {
  const own = (await caches.keys()).filter((name) => name.startsWith(FAMILY) && name !== CACHE)
  await Promise.all(own.slice(0, -1).map((name) => caches.delete(name)))
}

async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE)
  const front = request.mode === 'navigate' ? addressOf('index.html') : null
  const kept = await cache.match(front ?? request, { ...ANY_FORM, ignoreSearch: front !== null })
  return kept ?? (await caches.match(request, ANY_FORM)) ?? fetch(request)
}

/** The front page, under its own name or that of its folder. */
const isOurs = (request: Request): boolean => {
  if (request.method !== 'GET') return false
  const { origin, pathname } = new URL(request.url)
  const folder = new URL('./', self.location.href)
  if (origin !== folder.origin || !pathname.startsWith(folder.pathname)) return false
  if (request.mode !== 'navigate') return true
  return pathname === folder.pathname || pathname === `${folder.pathname}index.html`
}

self.addEventListener('install', (event) => event.waitUntil(keepAll()))

self.addEventListener('activate', (event) =>
  event.waitUntil(dropOldVersions().then(() => self.clients.claim())),
)

self.addEventListener('fetch', (event) => {
  if (isOurs(event.request)) event.respondWith(answer(event.request))
})

/** A newer version waits until the maker asks for it. */
self.addEventListener('message', (event) => {
  if (event.data === 'take-over') event.waitUntil(self.skipWaiting())
})

export {}
