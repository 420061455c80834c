import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { temporaryFolder } from '../testing/folders.ts'
import { tlsServer } from '../testing/tlsServer.ts'
import { certificatePem, newKey, serverExtensions, writeCertificate } from './certificate.ts'
import { CertificateError, type CertificateFault } from './faults.ts'
import { ownCertificate } from './ownCertificate.ts'
import { shopCertificates } from './shopCertificates.ts'

const NOW = new Date()
const inDays = (days: number) => new Date(NOW.getTime() + days * 86_400_000)

let folder: string
let remove: () => Promise<void>
let file: string
let keyFile: string
beforeAll(async () => {
  ;({ folder, remove } = await temporaryFolder())
  const made = await shopCertificates({ folder, names: ['bench.local'], addresses: [], now: NOW, host: 'bench' })
  ;[file, keyFile] = [await kept('own.pem', made.cert), await kept('own.key', made.key)]
})
afterAll(() => remove())

async function kept(name: string, text: string): Promise<string> {
  await writeFile(join(folder, name), text)
  return join(folder, name)
}
const fault = (expected: Partial<CertificateFault>) =>
  expect.objectContaining({ name: 'CertificateError', fault: expect.objectContaining(expected) })

test('a certificate of one’s own serves with its chain', async () => {
  const own = await ownCertificate(file, keyFile, NOW)
  const authority = own.cert.slice(own.cert.lastIndexOf('-----BEGIN'))
  const server = await tlsServer(own)
  try {
    expect(await server.trustedAs('bench.local', authority)).toBe('trusted')
  } finally {
    await server.close()
  }
})

test('it is refused with words before it begins and after it has ended', async () => {
  const { validUntil } = await ownCertificate(file, keyFile, NOW)
  await expect(ownCertificate(file, keyFile, validUntil)).rejects.toEqual(fault({ code: 'expired', file }))
  await expect(ownCertificate(file, keyFile, inDays(-2))).rejects.toEqual(fault({ code: 'not-yet', file }))
})

test('what is missing, is something else, or does not fit is told of, with the file that it is about', async () => {
  const away = join(folder, 'away.pem')
  await expect(ownCertificate(away, keyFile, NOW)).rejects.toEqual(fault({ code: 'not-readable', file: away }))
  await expect(ownCertificate(file, away, NOW)).rejects.toEqual(fault({ code: 'not-readable', file: away }))
  await expect(ownCertificate(folder, keyFile, NOW)).rejects.toEqual(fault({ code: 'not-readable', file: folder }))
  await expect(ownCertificate(keyFile, file, NOW)).rejects.toEqual(fault({ code: 'not-a-certificate', file: keyFile }))
  await expect(ownCertificate(file, file, NOW)).rejects.toEqual(fault({ code: 'not-a-key', file }))
  const locked = await kept(
    'locked.key',
    String(newKey().export({ type: 'pkcs8', format: 'pem', cipher: 'aes-256-cbc', passphrase: 'x' })),
  )
  await expect(ownCertificate(file, locked, NOW)).rejects.toEqual(fault({ code: 'not-a-key', file: locked }))
  const other = await kept('other.key', String(newKey().export({ type: 'pkcs8', format: 'pem' })))
  await expect(ownCertificate(file, other, NOW)).rejects.toEqual(fault({ code: 'other-key', file, keyFile: other }))
})

test('a chain that TLS does not take is told of before the server listens', async () => {
  const key = newKey()
  const told = {
    subject: 'x',
    issuer: 'x',
    from: inDays(-1),
    until: inDays(9),
    extensions: serverExtensions(['x.example'], []),
  }
  const leaf = certificatePem(writeCertificate({ ...told, key, signedBy: key }))
  const torn = await kept('torn.pem', `${leaf}-----BEGIN CERTIFICATE-----\nAAAA\n-----END CERTIFICATE-----\n`)
  const its = await kept('torn.key', String(key.export({ type: 'pkcs8', format: 'pem' })))
  await expect(ownCertificate(torn, its, NOW)).rejects.toEqual(fault({ code: 'not-usable', file: torn }))
})

test('every fault has words that name what it is about', () => {
  const faults: CertificateFault[] = [
    { code: 'folder-not-writable', folder: '<this>', reason: 'no space' },
    { code: 'damaged-authority', file: '<this>', reason: 'Torn.' },
    { code: 'authority-ended', file: '<this>', until: '2036-03-01T00:00:00.000Z' },
    { code: 'clock-behind', says: '<this>' },
    { code: 'name-outside', name: '<this>' },
    { code: 'not-readable', file: '<this>', reason: 'away' },
    { code: 'not-a-certificate', file: '<this>' },
    { code: 'not-a-key', file: '<this>' },
    { code: 'other-key', file: '<this>', keyFile: 'key' },
    { code: 'expired', file: '<this>', until: '2036-03-01T00:00:00.000Z' },
    { code: 'not-yet', file: '<this>', from: '2036-03-01T00:00:00.000Z' },
    { code: 'not-usable', file: '<this>', reason: 'too weak' },
  ]
  for (const each of faults) {
    const error = new CertificateError(each)
    expect(error.message).toContain('<this>')
    expect([error.name, error.fault]).toEqual(['CertificateError', each])
  }
})
