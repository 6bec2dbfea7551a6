import { describe, expect, it } from 'vitest'
import { key, playTool, press, toolScene } from '../../../../../tests/support/toolScene'
import { pxPoint } from '../../../../core/geometry'
import type { ProposedVoid } from '../../../../state/tracingStore'
import { proposalTool } from './proposalTool'

const square = (id: string, x: number): ProposedVoid => ({
  id,
  kind: 'void',
  lightnessFraction: 0.3,
  ringPx: [pxPoint(x, 100), pxPoint(x + 200, 100), pxPoint(x + 200, 300), pxPoint(x, 300)],
})
const voids = [square('a', 100), square('b', 800)]
const scene = toolScene({ tool: 'proposals', tracing: { voids, chosenVoid: 'a' } })
const ordered = (event: Parameters<typeof proposalTool.step>[1]) =>
  playTool(proposalTool, scene, [event]).last.trace

describe('proposalTool', () => {
  it('chooses the proposal under a tap, within it or near its line', () => {
    expect(ordered(press([210, 50]))).toEqual([{ kind: 'choose-void', id: 'b' }])
    expect(ordered(press([195, 50], 'touch'))).toEqual([{ kind: 'choose-void', id: 'b' }])
    const beside = playTool(proposalTool, scene, [press([500, 400])]).last
    expect(beside.taken).toBe(false)
    expect(beside.trace).toBeUndefined()
  })

  it('accepts and declines the chosen one, and goes round the list by keys', () => {
    expect(ordered(key('Enter'))).toEqual([{ kind: 'accept-void', id: 'a' }])
    expect(ordered(key('Delete'))).toEqual([{ kind: 'drop-void', id: 'a' }])
    expect(ordered(key(']'))).toEqual([{ kind: 'choose-void', id: 'b' }])
    expect(ordered(key('['))).toEqual([{ kind: 'choose-void', id: 'b' }])
    expect(ordered(key('Enter', { crosshair: [900, 200] }))).toEqual([{ kind: 'choose-void', id: 'b' }])
  })

  it('has nothing to do once nothing is proposed', () => {
    const bare = toolScene({ tool: 'proposals' })
    expect(playTool(proposalTool, bare, [key('Enter')]).last.unused).toBe(true)
  })
})
