/** A store that speaks S3, in this process. It takes any signature for a good one: signatures are held against published ones instead. */
import S3rver from 's3rver'
import { temporaryFolder } from '../../testing/folders.ts'
import type { Store } from '../s3Request.ts'

export type S3Server = { store: Store; close(): Promise<void> }

export async function s3Server(): Promise<S3Server> {
  const { folder, remove } = await temporaryFolder()
  const server = new S3rver({
    address: '127.0.0.1',
    port: 0,
    silent: true,
    directory: folder,
    configureBuckets: [{ name: 'shop', configs: [] }],
  })
  const { port } = await server.run()
  return {
    store: {
      origin: `http://127.0.0.1:${port}`,
      bucket: 'shop',
      prefix: 'bench/photographs/',
      region: 'us-east-1',
      accessKey: 'S3RVER',
      secretKey: 'S3RVER',
    },
    async close() {
      await server.close()
      await remove()
    },
  }
}
