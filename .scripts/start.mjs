// Shows the built program on this machine and to phones on the same network. Installs and builds what is missing.
// Options: --port N (5178; the next free one if taken), --no-open (do not open a browser).
import { spawn } from 'node:child_process'
import { networkInterfaces } from 'node:os'
import { parseArgs } from 'node:util'
import { buildIfStale, isBuilt } from './build.mjs'
import { installMissing } from './install.mjs'
import { root } from './root.mjs'

const { values } = parseArgs({
  options: { port: { type: 'string', default: '5178' }, 'no-open': { type: 'boolean', default: false } },
})
const wantedPort = Number(values.port)
if (!Number.isInteger(wantedPort) || wantedPort < 1 || wantedPort > 65535) {
  console.error(`--port must be a whole number from 1 to 65535, not ${values.port}.`)
  process.exit(1)
}

const hasDesktop = () =>
  process.platform !== 'linux' || Boolean(process.env['DISPLAY'] ?? process.env['WAYLAND_DISPLAY'])

/** @param {string} url */
const openInBrowser = (url) => {
  if (!hasDesktop()) return
  const [program, ...args] =
    process.platform === 'darwin'
      ? ['open', url]
      : process.platform === 'win32'
        ? ['cmd', '/c', 'start', '', url]
        : ['xdg-open', url]
  const child = spawn(/** @type {string} */ (program), args, { stdio: 'ignore', detached: true })
  // No browser is no reason to stop: the address stands on the screen.
  child.on('error', () => undefined)
  child.unref()
}

const lanAddresses = () =>
  Object.values(networkInterfaces())
    .flatMap((addresses) => addresses ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address }) => address)

installMissing()
if (!isBuilt()) console.log('Building ...')
buildIfStale()

const { preview } = await import('vite')
const server = await preview({
  root,
  logLevel: 'warn',
  preview: { port: wantedPort, strictPort: false, host: true, allowedHosts: true, open: false },
})
const address = server.httpServer.address()
const port = address && typeof address === 'object' ? address.port : wantedPort
const localUrl = `http://localhost:${port}/`

console.log(`\nWaneline is ready.\n  on this machine         ${localUrl}`)
for (const lan of lanAddresses()) console.log(`  on a phone beside it    http://${lan}:${port}/`)
console.log('  Ctrl-C ends it.\n')
if (!values['no-open']) openInBrowser(localUrl)

for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM'])) {
  process.on(signal, () => process.exit(0))
}
