import { builtPage } from '../builtPage.ts'
import { recordPaper } from '../recordPaper.ts'
import { STATUS } from '../world.ts'
import { greeting, pairingLink } from './greeting.ts'
import { keepingCommand } from './keeping.ts'

const USUAL_PORT = 7480
const LEVELS = ['silent', 'error', 'warn', 'info', 'debug']

const WORDS =
  'serve [--data DIR] [--port N] [--shop] [--name NAME] [--certificate FILE --key FILE] [--another-owner] [--log LEVEL] [--json]'

const HELP = `gripbook ${WORDS}

Keeps the shop's record and serves it, with the page, to the shop's devices until it is stopped (Ctrl-C).

  --data DIR          where the record is kept (else GRIPBOOK_DATA, else ~/.local/share/gripbook;
                      as root /var/lib/gripbook)
  --port N            the port, ${USUAL_PORT} if not given
  --shop              listens to the shop's network, by HTTPS; without it to this machine alone
  --name NAME         one more name that devices reach it by, for its certificate
  --certificate FILE  a certificate of your own (PEM, with its chain), and
  --key FILE          its private key; without them the shop's own authority makes one
  --another-owner     prints a code for one more owner: for an owner who has lost every device
  --log LEVEL         ${LEVELS.join(', ')}; "info" if not given. Logs are JSON lines on standard error.
  --json              what is printed when it serves as JSON on one line: addresses, code and link for the owner

GRIPBOOK_DATABASE_URL=postgres://… keeps the record on a PostgreSQL server instead of the data folder.
The first start prints a one-time code, and a link that pairs with it at once: the device that is paired so belongs to the owner.
`

/** The shop's server. */
export const serveCommand = keepingCommand({
  name: 'serve',
  words: WORDS,
  help: HELP,
  withValue: ['--data', '--port', '--name', '--certificate', '--key', '--log'],
  flags: ['--shop', '--another-owner', '--json'],
  async run({ words, values, flags, world, out, refuse }, server) {
    if (words.length > 0) return refuse(`${JSON.stringify(words[0])} is one word too many. See: gripbook serve --help`)
    const port = Number(values.get('--port') ?? USUAL_PORT)
    if (!Number.isInteger(port) || port < 0 || port > 65_534)
      return refuse('--port needs a whole number from 0 to 65534.')
    const level = values.get('--log') ?? 'info'
    if (!LEVELS.includes(level)) return refuse(`--log is one of ${LEVELS.join(', ')}.`)
    const [file, keyFile] = [values.get('--certificate'), values.get('--key')]
    if ((file === undefined) !== (keyFile === undefined)) return refuse('--certificate and --key go together.')
    if (file !== undefined && !flags.has('--shop'))
      return refuse('--certificate is for the shop’s network: add --shop.')
    const page = await builtPage()
    const running = await server.serve({
      env: world.env,
      dataFolder: values.get('--data') ?? server.dataFolder(world.env),
      port,
      shop: flags.has('--shop'),
      names: values.has('--name') ? [values.get('--name')!] : [],
      certificate: file === undefined ? null : { file, keyFile: keyFile! },
      anotherOwner: flags.has('--another-owner'),
      page,
      paper: recordPaper(),
      logger: level === 'silent' ? false : { level, stream: { write: world.err } },
    })
    const { stop, ...said } = running
    const json = flags.has('--json')
    // On one line: whoever reads it waits for its end, while the server goes on.
    if (json)
      out(
        `${JSON.stringify({ gripbook: 'serve/1', ...said, page: page !== null, link: pairingLink(said, page !== null) })}\n`,
      )
    else out(greeting(said, page !== null))
    await world.stopAsked()
    if (!json) out('Stopping.\n')
    await stop()
    return STATUS.right
  },
})
