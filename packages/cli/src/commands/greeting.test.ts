import { expect, test } from 'vitest'
import { greeting } from './greeting.ts'

const HERE = { addresses: ['http://localhost:7480'], where: '/data', ownerCode: '7K3M-2P9X-4RTV', trust: null }

test('a first start prints the link that pairs at once on a line of its own, and the code for a device elsewhere', () => {
  expect(greeting(HERE, true)).toBe(
    `Gripbook serves at http://localhost:7480
The record is kept at /data

Open this to pair the owner’s device at once:
http://localhost:7480/#pair=7K3M-2P9X-4RTV

Or pair the owner’s device with the code  7K3M-2P9X-4RTV
It counts once, until the next start.

`,
  )
})

test('once there is an owner it prints the address alone', () => {
  expect(greeting({ ...HERE, ownerCode: null }, true)).toBe(
    'Gripbook serves at http://localhost:7480\nThe record is kept at /data\n\n',
  )
})

test('without the page it says what to do, and prints no link that would lead nowhere', () => {
  const said = greeting(HERE, false)
  expect(said).toContain('The page is not built: npm run build, then start again.\n')
  expect(said).toContain('Pair the owner’s device with the code  7K3M-2P9X-4RTV\n')
  expect(said).not.toContain('#pair=')
})

test('for the shop’s network the link has the address that devices reach, after what makes them trust it', () => {
  const fingerprint = Array.from({ length: 32 }, (_, i) => i.toString(16).padStart(2, '0').toUpperCase()).join(':')
  const said = greeting(
    {
      ...HERE,
      addresses: ['https://192.168.1.4:7480', 'https://shop.local:7480'],
      trust: { address: 'http://192.168.1.4:7481', fingerprint },
    },
    true,
  )
  expect(said).toMatch(
    /also https:\/\/shop\.local:7480[\s\S]*open http:\/\/192\.168\.1\.4:7481 on it[\s\S]*1E 1F\n\n[\s\S]*^https:\/\/192\.168\.1\.4:7480\/#pair=7K3M-2P9X-4RTV$/m,
  )
})
