import { expect, it } from 'vitest'
import { acuteAngle } from './acuteAngle'

// A line has no direction: turned by half a turn it is the same line.
it.each([
  [0, 0],
  [30, 30],
  [-30, 30],
  [120, 60],
  [180, 0],
  [-88.7, 88.7],
])('a line at %f degrees lies at %f degrees to the datum', (given, acute) => {
  expect(acuteAngle((given * Math.PI) / 180)).toBeCloseTo((acute * Math.PI) / 180, 12)
})
