import { expect, test } from 'vitest'
import { der, integer, oid, sequence, TAG, time } from './der.ts'
import { addressBytes } from './permitted.ts'

const hex = (bytes: Uint8Array) => Buffer.from(bytes).toString('hex')

test('lengths are written in as few bytes as can be (ITU-T X.690, 8.1.3 and 10.1)', () => {
  for (const [length, written] of [
    [0, '00'],
    [38, '26'],
    [127, '7f'],
    [128, '8180'],
    [201, '81c9'],
    [255, '81ff'],
    [256, '820100'],
    [65_535, '82ffff'],
    [65_536, '83010000'],
  ] as const)
    expect(hex(der(TAG.octets, Buffer.alloc(length))).slice(2, 2 + written.length)).toBe(written)
})

test('object identifiers are those that the standards print (RFC 5480; X.690 8.19.5)', () => {
  expect(hex(oid('1.2.840.10045.4.3.2'))).toBe('06082a8648ce3d040302')
  expect(hex(oid('2.5.29.17'))).toBe('0603551d11')
  expect(hex(oid('2.999.3'))).toBe('0603883703')
})

test('whole numbers have no byte too many and none of them is below zero (X.690, 8.3)', () => {
  for (const [given, written] of [
    ['', '020100'],
    ['00', '020100'],
    ['7f', '02017f'],
    ['80', '02020080'],
    ['0000ff00', '020300ff00'],
  ])
    expect(hex(integer(Buffer.from(given!, 'hex')))).toBe(written)
})

test('a year from 2050 on has four digits (RFC 5280, 4.1.2.5)', () => {
  expect(time(new Date('2049-12-31T23:59:59.900Z')).toString('latin1').slice(2)).toBe('491231235959Z')
  expect(time(new Date('2050-01-01T00:00:00Z')).toString('latin1').slice(2)).toBe('20500101000000Z')
  expect([time(new Date(0))[0], time(new Date('2050-01-01'))[0]]).toEqual([TAG.utcTime, TAG.generalizedTime])
  expect(hex(sequence())).toBe('3000')
})

test('addresses are read in every way that RFC 4291, 2.2, shows', () => {
  for (const [address, bytes] of [
    ['192.168.1.20', 'c0a80114'],
    ['2001:DB8:0:0:8:800:200C:417A', '20010db80000000000080800200c417a'],
    ['2001:DB8::8:800:200C:417A', '20010db80000000000080800200c417a'],
    ['FF01::101', 'ff010000000000000000000000000101'],
    ['::1', `${'0'.repeat(31)}1`],
    ['::', '0'.repeat(32)],
    ['1::', `0001${'0'.repeat(28)}`],
    ['::FFFF:129.144.52.38', '00000000000000000000ffff81903426'],
  ] as const)
    expect(hex(addressBytes(address)), address).toBe(bytes)
})
