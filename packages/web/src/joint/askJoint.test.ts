import { expect, test } from 'vitest'
import { askJoint, engagementIn } from './askJoint.ts'

const hole = { id: '1', thread: 'M6', grip: 30, mouth: 1, threadDepth: 15, bottomDepth: 19 }
const kind = { id: 'b', thread: 'M6', length: 45, threadLength: 30, tip: 1, class: '8.8' }
const face = { id: 'pan', torque: 10, material: 'cast aluminium', holes: [hole] }

test('without a torque there is nothing to check', () => {
  const { torque: _, ...bare } = face
  expect(askJoint(bare, hole, kind)).toEqual({ can: false, lacks: 'torque' })
})

test('a hole’s own torque goes before that of the face', () => {
  const asked = askJoint(face, { ...hole, torque: { value: 8, unit: 'N·m' } }, kind)
  expect(asked.can && asked.wanted.torque).toEqual({ lo: 8, hi: 8 })
})

test('a thread that is not known for sure is not checked', () => {
  expect(askJoint(face, { ...hole, thread: ['M6', '1/4-20'] }, undefined)).toEqual({ can: false, lacks: 'thread' })
  expect(askJoint(face, { ...hole, thread: ['M6', '1/4-20'] }, kind).can).toBe(true)
})

test('the overlap of full threads ends where the first of its four ends is', () => {
  // s = 15; past the mouth less the tip 13; own thread less the tip 29; hole's thread 15; 1 + 15 − 15 + 30 = 31
  expect(engagementIn(face, hole, kind, 1)).toEqual({ lo: 13, hi: 13 })
  // the bolt's own thread is short: 10 − 1 = 9, and 1 + 15 − 15 + 10 = 11
  expect(engagementIn(face, hole, { ...kind, threadLength: 10 }, 1)).toEqual({ lo: 9, hi: 9 })
  // an unread grip leaves it open from below, so nothing is claimed
  const { grip: _, ...unread } = hole
  expect(engagementIn(face, unread, kind, 1)).toBeUndefined()
})
