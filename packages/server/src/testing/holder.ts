/** A Gripbook of its own process that opens the data folder it is told of, says so, and waits to be killed. Run by tsx. */
import { connect } from '../database/connect.ts'

await connect({}, process.argv[2]!)
process.send!('open')
setInterval(() => {}, 1_000)
