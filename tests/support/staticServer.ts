import { existsSync, readFileSync, statSync } from 'node:fs'
import { createServer, type ServerResponse } from 'node:http'
import { extname, join } from 'node:path'

const MEDIA_TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
}

export interface StaticServer {
  /** Where the folder is served; ends in a slash. */
  readonly url: string
  /** Paths that were asked for, in order, outside of the folder too. */
  readonly asked: readonly string[]
  /** From now on this path of the folder has other bytes; null: it is missing. */
  readonly replace: (path: string, bytes: string | Uint8Array | null) => void
  readonly close: () => Promise<void>
}

/** As plain as a host can be: the files of a folder, below a path of the address, nothing more. */
export async function staticServer(folder: string, below = '/shop/tools/slabs/'): Promise<StaticServer> {
  const asked: string[] = []
  const replaced = new Map<string, string | Uint8Array | null>()

  const bytesOf = (path: string): string | Uint8Array | null => {
    const other = replaced.get(path)
    if (other !== undefined) return other
    const file = join(folder, path)
    return existsSync(file) && statSync(file).isFile() ? readFileSync(file) : null
  }
  const send = (response: ServerResponse, path: string): void => {
    const bytes = bytesOf(path)
    response.writeHead(bytes === null ? 404 : 200, {
      'content-type': MEDIA_TYPES[extname(path)] ?? 'text/plain',
      // Many hosts say so though they have one form of each file only.
      vary: 'accept-encoding, accept-language, origin',
      'cache-control': 'no-cache',
    })
    response.end(bytes ?? 'not here')
  }
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost')
    asked.push(pathname)
    const within = pathname.startsWith(below) ? pathname.slice(below.length) : '?'
    send(response, within === '' ? 'index.html' : within)
  })
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve)
  })
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error('the server has no port')
  return {
    url: `http://127.0.0.1:${address.port}${below}`,
    asked,
    replace: (path, bytes) => void replaced.set(path, bytes),
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections()
        server.close(() => resolve())
      }),
  }
}
