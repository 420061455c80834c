import { expect, test } from 'vitest'
import { jobChange, nextJobId } from './jobChange.ts'

test('only what was changed is written', () => {
  const was = { id: 'pan/clean', name: 'Clean', minutes: 4, after: ['a'] }
  expect(jobChange(was, { name: 'Clean', minutes: 4, after: ['a'] })).toEqual({})
  expect(jobChange(was, { name: 'Wash', minutes: 4, after: [] })).toEqual({ name: 'Wash', after: [] })
  expect(jobChange(undefined, { name: 'Wash', after: [] })).toEqual({ name: 'Wash' })
})

test('a new job has an id that nothing had before', () => {
  const entries = [{ body: { job: 'job 2' } }] as never
  expect(nextJobId({ entries: [] }, [])).toBe('job 1')
  expect(nextJobId({ entries }, [{ id: 'job 1' }])).toBe('job 3')
})
