/** Of a package that brings no types: what the tests use of it. */
declare module 's3rver' {
  type Options = {
    address: string
    port: number
    silent: boolean
    directory: string
    configureBuckets: { name: string; configs: string[] }[]
  }
  export default class S3rver {
    constructor(options: Options)
    run(): Promise<{ port: number }>
    close(): Promise<void>
  }
}
