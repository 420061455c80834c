import { execFile } from 'node:child_process'
import { createPrivateKey, type KeyObject, X509Certificate } from 'node:crypto'
import { chmod, mkdir, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { temporaryFolder } from '../testing/folders.ts'
import { tlsServer } from '../testing/tlsServer.ts'
import { authorityExtensions, certificatePem, newKey, serverExtensions, writeCertificate } from './certificate.ts'
import { nameConstraints, permitsName } from './permitted.ts'
import { type ForShop, shopCertificates } from './shopCertificates.ts'

const DAY = 86_400_000
const START = new Date()
const later = (days: number) => new Date(START.getTime() + days * DAY)
const run = promisify(execFile)

let folder: string
let remove: () => Promise<void>
beforeEach(async () => {
  const made = await temporaryFolder()
  remove = made.remove
  folder = join(made.folder, 'shop')
})
afterEach(() => remove())

const usual = { names: ['bench2', 'bench2.local'], addresses: ['192.168.1.20', 'fd00::20'], host: 'bench2' }
const make = (given: Partial<ForShop> = {}) => shopCertificates({ folder, ...usual, now: START, ...given })
const authorityFile = () => join(folder, 'certificates', 'authority.pem')
const serverFile = () => join(folder, 'certificates', 'server.pem')
const fault = (code: string) =>
  expect.objectContaining({ name: 'CertificateError', fault: expect.objectContaining({ code }) })

type Signer = { issuer: string; key: KeyObject }

/** The authority as someone has it who stole its file. */
async function stolen(): Promise<Signer> {
  const text = await readFile(authorityFile(), 'utf8')
  const root = new X509Certificate(text.slice(text.indexOf('-----BEGIN CERT')))
  return { issuer: /^CN=(.*)$/m.exec(root.subject)![1]!, key: createPrivateKey(text) }
}

function forged(signer: Signer, subject: string, extensions: Buffer[]): { key: KeyObject; cert: string } {
  const key = newKey()
  const told = { subject, issuer: signer.issuer, from: later(-1), until: later(30), extensions }
  return { key, cert: certificatePem(writeCertificate({ ...told, key, signedBy: signer.key })) }
}

const pemOf = (key: KeyObject) => String(key.export({ type: 'pkcs8', format: 'pem' }))

describe('what devices see', () => {
  test('a device that trusts the authority alone trusts the server by each of its names and addresses, and by no other', async () => {
    const { key, cert, authority } = await make()
    const server = await tlsServer({ key, cert })
    try {
      for (const name of ['bench2', 'bench2.local', 'localhost', '192.168.1.20', 'fd00::20', '127.0.0.1', '::1'])
        expect([name, await server.trustedAs(name, authority.pem)]).toEqual([name, 'trusted'])
      for (const name of ['bench.example', 'other.local', 'x.bench2.local', '192.168.1.21'])
        expect([name, await server.trustedAs(name, authority.pem)]).toEqual([name, 'ERR_TLS_CERT_ALTNAME_INVALID'])
      const { authority: other } = await shopCertificates({ ...usual, folder: join(folder, 'other'), now: START })
      expect(await server.trustedAs('bench2', other.pem)).not.toBe('trusted')
    } finally {
      await server.close()
    }
  })

  test('openssl takes authority and certificate for what they say, under its strict rules', async () => {
    const { cert, authority } = await make()
    const [root, leaf] = [join(folder, 'root.pem'), join(folder, 'leaf.pem')]
    await Promise.all([writeFile(root, authority.pem), writeFile(leaf, cert)])
    const verify = ['verify', '-x509_strict', '-purpose', 'sslserver', '-CAfile', root]
    for (const [how, name] of [
      ['-verify_hostname', 'bench2.local'],
      ['-verify_ip', '192.168.1.20'],
      ['-verify_ip', 'fd00::20'],
    ] as const)
      expect((await run('openssl', [...verify, how, name, leaf])).stdout).toContain(': OK')
    await expect(run('openssl', [...verify, '-verify_hostname', 'bench.example', leaf])).rejects.toThrow(
      'hostname mismatch',
    )
    const { stdout: told } = await run('openssl', ['x509', '-in', root, '-noout', '-text'])
    for (const part of [
      /Public Key Algorithm: id-ecPublicKey[\s\S]*NIST CURVE: P-256/,
      /Basic Constraints: critical\s+CA:TRUE, pathlen:0/,
      /Key Usage: critical\s+Certificate Sign\n/,
      /Extended Key Usage: \s+TLS Web Server Authentication\n/,
      /Name Constraints: critical\s+Permitted:\s+DNS:local\s+DNS:home.arpa\s+DNS:localhost\s+DNS:bench2\s+IP:10.0.0.0\/255.0.0.0\s+IP:172.16.0.0\/255.240.0.0/,
      /IP:FC00:0:0:0:0:0:0:0\/FE00:0:0:0:0:0:0:0\s+IP:FE80:0:0:0:0:0:0:0\/FFC0:0:0:0:0:0:0:0\s+IP:0:0:0:0:0:0:0:1\/FFFF:FFFF/,
    ])
      expect(told).toMatch(part)
    const { stdout: server } = await run('openssl', ['x509', '-in', leaf, '-noout', '-text'])
    expect(server).toMatch(/Basic Constraints: critical\s+CA:FALSE/)
    expect(server).toMatch(/Key Usage: critical\s+Digital Signature\n/)
    expect(server).toMatch(/Extended Key Usage: \s+TLS Web Server Authentication\n/)
    expect(server).toContain(
      'DNS:bench2, DNS:bench2.local, DNS:localhost, IP Address:0:0:0:0:0:0:0:1, IP Address:127.0.0.1',
    )
  })

  test('with the stolen key of the authority nobody stands for a name or an address of the world, nor makes a further authority', async () => {
    const { authority } = await make()
    const thief = await stolen()
    const tried = async (names: string[], addresses: string[], called: string, signer = thief, chain = '') => {
      const { key, cert } = forged(signer, names[0] ?? 'x', serverExtensions(names, addresses))
      const server = await tlsServer({ key: pemOf(key), cert: cert + chain })
      try {
        return await server.trustedAs(called, authority.pem)
      } finally {
        await server.close()
      }
    }
    expect(await tried(['shop.local'], [], 'shop.local')).toBe('trusted')
    for (const name of ['bank.example', 'local.example', 'notlocal', 'xbench2', '*.example'])
      expect([name, await tried([name], [], name.replace('*', 'www'))]).toEqual([name, 'permitted subtree violation'])
    for (const address of [
      '8.8.8.8',
      '172.32.0.1',
      '172.15.255.255',
      '192.169.0.1',
      '11.0.0.1',
      '2001:db8::1',
      '::2',
      'fec0::1',
    ])
      expect([address, await tried([], [address], address)]).toEqual([address, 'permitted subtree violation'])
    expect(await tried(['shop.local', 'bank.example'], [], 'shop.local')).toBe('permitted subtree violation')
    const further = forged(thief, 'Further', authorityExtensions(nameConstraints(null)))
    const below = { issuer: 'Further', key: further.key }
    expect(await tried(['shop.local'], [], 'shop.local', below, further.cert)).toBe('PATH_LENGTH_EXCEEDED')
  })

  test('three hundred names and addresses are all in the certificate', async () => {
    const names = Array.from({ length: 200 }, (_, i) => `bench-${i}.local`)
    const addresses = Array.from({ length: 100 }, (_, i) => `10.0.${i}.1`)
    const server = await tlsServer(await make({ names, addresses }))
    try {
      const { authority } = await make({ names, addresses })
      for (const name of [names[0]!, names[199]!, addresses[0]!, addresses[99]!])
        expect(await server.trustedAs(name, authority.pem)).toBe('trusted')
    } finally {
      await server.close()
    }
  })
})

describe('what is kept', () => {
  test('the authority is made once and the certificate stays while nothing changes, also when two processes start at once', async () => {
    const made = await Promise.all([make(), make(), make(), make()])
    expect(new Set(made.map(({ authority }) => authority.fingerprint)).size).toBe(1)
    const first = await make()
    expect(await make({ now: later(300), names: ['bench2.local', 'BENCH2', 'bench2.local.'] })).toEqual(first)
    expect(first.authority.fingerprint).toMatch(/^[0-9A-F]{2}(:[0-9A-F]{2}){31}$/)
    expect((await readdir(join(folder, 'certificates'))).sort()).toEqual(['authority.pem', 'server.pem'])
  })

  test('keys are for this user alone, and a file that others could read is closed to them again', async () => {
    await make()
    const modes = async () =>
      Promise.all([authorityFile(), serverFile()].map(async (file) => (await stat(file)).mode & 0o777))
    expect(await modes()).toEqual([0o600, 0o600])
    expect((await stat(join(folder, 'certificates'))).mode & 0o777).toBe(0o700)
    await Promise.all([chmod(authorityFile(), 0o644), chmod(serverFile(), 0o640)])
    await make()
    expect(await modes()).toEqual([0o600, 0o600])
  })

  test('the certificate is good for 397 days and renewed when less than thirty are left; the authority stays', async () => {
    const first = await make()
    const { validFrom, validTo } = new X509Certificate(first.cert)
    expect((Date.parse(validTo) - Date.parse(validFrom)) / DAY).toBe(397)
    expect((first.validUntil.getTime() - START.getTime()) / DAY).toBeCloseTo(396, 3)
    expect((await make({ now: later(365.9) })).cert).toBe(first.cert)
    const second = await make({ now: later(366.1) })
    expect((second.validUntil.getTime() - first.validUntil.getTime()) / DAY).toBeCloseTo(366.1, 3)
    expect([second.key === first.key, second.authority]).toEqual([false, first.authority])
  })

  test('another name or address makes another certificate at once', async () => {
    const first = await make()
    const moved = await make({ addresses: ['192.168.1.21'] })
    expect(moved.cert).not.toBe(first.cert)
    const server = await tlsServer(moved)
    try {
      expect(await server.trustedAs('192.168.1.21', first.authority.pem)).toBe('trusted')
      expect(await server.trustedAs('192.168.1.20', first.authority.pem)).toBe('ERR_TLS_CERT_ALTNAME_INVALID')
    } finally {
      await server.close()
    }
    const named = await make({ addresses: ['192.168.1.21'], names: [...usual.names, 'office.home.arpa'] })
    expect(new X509Certificate(named.cert).checkHost('office.home.arpa')).toBe('office.home.arpa')
  })

  test('after ten years the authority has ended, with words; its last certificates end with it and are not made again and again', async () => {
    await make()
    const last = await make({ now: later(3640) })
    const again = await make({ now: later(3645) })
    expect([again.cert, again.validUntil]).toEqual([last.cert, last.validUntil])
    await expect(make({ now: later(3660) })).rejects.toEqual(fault('authority-ended'))
  })

  test('a damaged authority is a fault with words and stays as it is; a damaged certificate of the server is made anew', async () => {
    const first = await make()
    const whole = await readFile(authorityFile(), 'utf8')
    const [key, cert] = whole.split(/(?=-----BEGIN CERT)/) as [string, string]
    await writeFile(serverFile(), 'torn')
    expect((await make()).authority).toEqual(first.authority)
    const otherKey = pemOf(newKey())
    const leaf = (await readFile(serverFile(), 'utf8')).split(/(?=-----BEGIN CERT)/)
    for (const damage of [
      '',
      whole.slice(0, 100),
      key,
      cert,
      otherKey + cert,
      whole.replace(/[A-Z]/g, 'x'),
      leaf.join(''),
    ]) {
      await writeFile(authorityFile(), damage)
      await expect(make(), damage.slice(0, 40)).rejects.toEqual(fault('damaged-authority'))
      expect(await readFile(authorityFile(), 'utf8')).toBe(damage)
    }
    await writeFile(authorityFile(), whole)
    expect((await make()).authority).toEqual(first.authority)
    await rm(authorityFile())
    await mkdir(authorityFile())
    await expect(make()).rejects.toEqual(fault('damaged-authority'))
  })
})

describe('what it is asked for', () => {
  test('a name of the world is refused with words; an address of the world, which a machine may have, is left out', async () => {
    for (const name of ['shop.example', 'bench.local.example', '8.8.8.8', 'not a name', '*.local', 'local..'])
      await expect(make({ names: [name] }), name).rejects.toEqual(fault('name-outside'))
    const { cert } = await make({
      addresses: ['2001:db8::7', '8.8.8.8', 'fe80::1%eth0', 'x', '192.168.1.20'],
      names: ['10.1.2.3'],
    })
    expect(new X509Certificate(cert).subjectAltName).toBe(
      'DNS:localhost, IP Address:0:0:0:0:0:0:0:1, IP Address:10.1.2.3, IP Address:127.0.0.1, IP Address:192.168.1.20',
    )
  })

  test('a machine that is called otherwise than when its authority was made is still reached by its other names', async () => {
    await make({ host: 'Bench2', names: ['bench2', 'bench2.local'] })
    const { cert } = await make({ host: 'office', names: ['office', 'office.local'] })
    expect(new X509Certificate(cert).subjectAltName).toMatch(/^DNS:localhost, DNS:office.local, IP/)
    const strange = await make({ host: 'my shop', names: ['my shop', 'my shop.local'] })
    expect(new X509Certificate(strange.cert).subjectAltName).toMatch(/^DNS:localhost, IP/)
  })

  test('a machine that is called like a top-level domain gives its authority no right to that domain', async () => {
    for (const host of ['dev', 'COM', 'xn--p1ai', 'workbench']) {
      const own = host.toLowerCase()
      const { cert, authority } = await make({ folder: join(folder, own), host, names: [own, `${own}.local`] })
      expect(new X509Certificate(cert).subjectAltName).toMatch(
        /^DNS:(localhost, DNS:[^,]+\.local|[^,]+\.local, DNS:localhost), IP/,
      )
      for (const name of [own, `bank.${own}`]) expect([name, permitsName(authority.der, name)]).toEqual([name, false])
    }
  })

  test('a clock that stands before Gripbook or before the authority was made is told of', async () => {
    await expect(make({ now: new Date(0) })).rejects.toEqual(fault('clock-behind'))
    await make({ now: later(100) })
    await expect(make()).rejects.toEqual(fault('clock-behind'))
  })

  test('a folder that cannot be made or written is told of', async () => {
    await writeFile(folder, 'a file')
    await expect(make()).rejects.toEqual(fault('folder-not-writable'))
  })
})
