import { spawn } from 'node:child_process'
import { createServer } from 'node:net'
import { networkInterfaces } from 'node:os'
import { expect, onTestFinished, test } from 'vitest'
import { inRoot, root } from '../../.scripts/root.mjs'

/** Starts `npm start`'s script and waits for the addresses it prints. */
const start = async (...args: readonly string[]) => {
  const child = spawn(process.execPath, [inRoot('.scripts', 'start.mjs'), '--no-open', ...args], {
    cwd: root,
  })
  onTestFinished(() => void child.kill('SIGKILL'))
  let output = ''
  child.stdout.on('data', (text) => (output += String(text)))
  child.stderr.on('data', (text) => (output += String(text)))
  const ended = new Promise<number | null>((resolve) => child.on('exit', resolve))
  const ready = new Promise<void>((resolve) =>
    child.stdout.on('data', () => {
      if (output.includes('Ctrl-C')) resolve()
    }),
  )
  await Promise.race([ready, ended])
  return { child, ended, output }
}

const takenPort = async (): Promise<number> => {
  const server = createServer()
  await new Promise<void>((resolve) => server.listen(0, () => resolve()))
  onTestFinished(() => void server.close())
  const address = server.address()
  return address && typeof address === 'object' ? address.port : 0
}

test('npm start serves the program here and to the network, on the next port when one is taken, until Ctrl-C', async () => {
  const taken = await takenPort()
  const { child, ended, output } = await start('--port', String(taken))
  const localUrl = /http:\/\/localhost:(\d+)\//.exec(output)
  expect(Number(localUrl?.[1])).toBeGreaterThan(taken)
  expect(await (await fetch(localUrl?.[0] ?? '')).text()).toContain('<title>Waneline</title>')

  const hasNetwork = Object.values(networkInterfaces()).some((list) =>
    list?.some(({ internal }) => !internal),
  )
  const phoneUrl = /on a phone beside it +(\S+)/.exec(output)?.[1]
  expect(phoneUrl !== undefined).toBe(hasNetwork)
  if (phoneUrl) expect((await fetch(phoneUrl)).status).toBe(200)

  child.kill('SIGINT')
  expect(await ended).toBe(0)
})

test('npm start says what is wrong with a port that is none', async () => {
  const { ended, output } = await start('--port', 'kitchen')
  expect(await ended).toBe(1)
  expect(output).toContain('--port must be a whole number from 1 to 65535, not kitchen.')
})
