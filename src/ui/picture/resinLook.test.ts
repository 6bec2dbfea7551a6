import { describe, expect, it } from 'vitest'
import { resinColours } from './resinLook'

describe('resinColours', () => {
  it('shows opaque resin in its own colour, tinted resin part of what lies below', () => {
    expect(resinColours({ kind: 'opaque', colour: '#204060' }).face).toBe('rgb(32 64 96)')
    expect(resinColours({ kind: 'tinted', colour: '#204060' }).face).not.toBe('rgb(32 64 96)')
  })

  it('gives clear resin no colour of its own', () => {
    const clear = resinColours({ kind: 'clear', colour: '#ff0000' })
    expect(clear).toEqual(resinColours({ kind: 'clear', colour: '#0000ff' }))
  })

  it('has light above and depth below the face', () => {
    const { face, light, deep } = resinColours({ kind: 'opaque', colour: '#808080' })
    expect([light, face, deep]).toEqual(['rgb(172 172 172)', 'rgb(128 128 128)', 'rgb(70 70 70)'])
  })
})
