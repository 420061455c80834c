/**
 * The page that tells how a device comes to trust the shop's authority, what that means and how to take it back. It works before there is any trust: one
 * file without script. How the systems name their settings is told from memory, and differs between their versions.
 */
import { createHash } from 'node:crypto'

export type ForTrust = {
  /** SHA-256 of the authority's certificate, pairs of hex digits with colons between them. */
  fingerprint: string
  /** Where the shop is then reached ("https://shop.local:7480"); null where that is not known. */
  address: string | null
}

const STYLE = `:root{color-scheme:light dark;--ink:#1b1f23;--paper:#fff;--soft:#f1f3f5;--line:#c9ced3;--link:#0b57a4}
@media (prefers-color-scheme:dark){:root{--ink:#e6e9ec;--paper:#15181b;--soft:#22272b;--line:#495057;--link:#8cc2ff}}
*{box-sizing:border-box}
body{margin:0 auto;padding:1rem;max-width:40rem;background:var(--paper);color:var(--ink);font:1rem/1.5 system-ui,sans-serif;overflow-wrap:anywhere}
h1{font-size:1.5rem;line-height:1.2;margin:.5rem 0 1rem}
h2{font-size:1.15rem;margin:1.75rem 0 .5rem}
p,ol,ul{margin:.5rem 0}
ol,ul{padding-left:1.4rem}
li{margin:.3rem 0}
a{color:var(--link)}
.get{display:block;padding:.8rem 1rem;border:2px solid var(--link);border-radius:.5rem;font-weight:600;text-align:center;text-decoration:none}
.print{margin:.5rem 0;padding:.75rem;border-radius:.5rem;background:var(--soft);font:600 1.05rem/1.7 ui-monospace,monospace;text-align:center}
.print span{display:block}
code{padding:.1rem .25rem;border-radius:.25rem;background:var(--soft);font:.95em ui-monospace,monospace}
details{border:1px solid var(--line);border-radius:.5rem;margin:.5rem 0;padding:0 .75rem}
summary{padding:.75rem 0;font-weight:600;cursor:pointer}`

/** The page may use this style and nothing else: to be sent as `content-security-policy`. */
export const TRUST_POLICY = `default-src 'none'; style-src 'sha256-${createHash('sha256').update(STYLE).digest('base64')}'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`

/** Where the authority's certificate (DER) is to be found beside the page. */
export const AUTHORITY_PATH = '/authority.crt'

type System = { name: string; compare: string; trust: readonly string[]; back: string }

const SYSTEMS: readonly System[] = [
  {
    name: 'Android',
    compare:
      'Android shows the fingerprint once the certificate is installed: <b>Settings → Security → Encryption &amp; credentials → Trusted credentials → User</b>. If it is another one, remove it there at once.',
    trust: [
      'Get the certificate with the button above.',
      'Open <b>Settings → Security → Encryption &amp; credentials → Install a certificate → CA certificate</b> (or look for “CA certificate” in the settings).',
      'Choose <b>Install anyway</b>, then <code>authority.crt</code> under Downloads.',
    ],
    back: '<b>Settings → Security → Encryption &amp; credentials → Trusted credentials → User</b>, then the certificate, then <b>Remove</b>.',
  },
  {
    name: 'iPhone and iPad',
    compare:
      'Before you install the profile, open <b>More Details</b> and the certificate there: its SHA-256 fingerprint stands at the end.',
    trust: [
      'Open this page in the browser that came with the device, get the certificate and allow the download.',
      'Open <b>Settings → General → VPN &amp; Device Management</b>, then the downloaded profile, and <b>Install</b> it.',
      'Open <b>Settings → General → About → Certificate Trust Settings</b> and switch the shop’s authority on.',
    ],
    back: '<b>Settings → General → VPN &amp; Device Management</b>, then the profile, then <b>Remove</b>.',
  },
  {
    name: 'Windows',
    compare:
      'In a command window, in the folder of your downloads: <code>certutil -hashfile authority.crt SHA256</code>',
    trust: [
      'Get the certificate and open the file.',
      'Choose <b>Install Certificate</b>, then <b>Current User</b>.',
      'Choose <b>Place all certificates in the following store</b>, and there <b>Trusted Root Certification Authorities</b>.',
    ],
    back: 'Look for “Manage user certificates” in the start menu; delete it under <b>Trusted Root Certification Authorities</b>.',
  },
  {
    name: 'macOS',
    compare: 'In a terminal: <code>shasum -a 256 ~/Downloads/authority.crt</code>',
    trust: [
      'Get the certificate and open the file: it is added to the login keychain.',
      'Open it in Keychain Access, unfold <b>Trust</b>, and choose <b>Always Trust</b>.',
    ],
    back: 'Delete it in Keychain Access.',
  },
  {
    name: 'Linux',
    compare: 'In a terminal: <code>sha256sum authority.crt</code>',
    trust: [
      'Get the certificate.',
      'In the browser’s settings look for <b>Certificates</b>, then <b>Authorities</b>, and import the file for identifying web sites.',
    ],
    back: 'Delete it in the browser’s list of authorities.',
  },
]

export function trustPage({ fingerprint, address }: ForTrust): string {
  const pairs = fingerprint.split(':')
  const lines = [0, 8, 16, 24].map((start) => `<span>${escaped(pairs.slice(start, start + 8).join(' '))}</span>`)
  const shop =
    address === null
      ? 'the address of the shop that the terminal names'
      : `<a href="${escaped(address)}">${escaped(address)}</a>`
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Trust this shop · Gripbook</title>
<style>${STYLE}</style>
</head>
<body>
<main>
<h1>Trust this shop</h1>
<p>The shop’s server shows a certificate that the shop’s own authority has signed. Your device does not know this authority yet. Once it does, it opens
Gripbook without a warning, and Gripbook works on it without the network and with the camera.</p>

<h2>1. Get the certificate</h2>
<p><a class="get" href="${AUTHORITY_PATH}">Get authority.crt</a></p>

<h2>2. Compare the fingerprint</h2>
<p>This page came over an open connection: someone in the network could have changed it. What counts is the SHA-256 fingerprint that
<b>your device</b> shows for the certificate. It must be the one in the terminal of the shop’s server. The server says it is:</p>
<p class="print">${lines.join('')}</p>
<p>If a single pair differs, do not trust the certificate.</p>

<h2>3. Trust it</h2>
${SYSTEMS.map(systemHtml).join('\n')}
<p>Some browsers keep a list of authorities of their own. If yours still warns, import the file in its settings, as under Linux.</p>

<h2>4. Open the shop</h2>
<p>Open ${shop}.</p>

<h2>What it means</h2>
<p>Your device then believes the certificates that this server makes for itself. The authority counts only for names and addresses of a local network: names
that end in <code>.local</code> or <code>.home.arpa</code>, <code>localhost</code>, the name of the server’s machine, and private addresses. A device that
holds authorities to such limits does not believe it for your bank or your post, even if its key were stolen; whether yours does was not tried. Trust it only if
you trust whoever runs this server.</p>

<h2>How to take it back</h2>
<ul>
${SYSTEMS.map(({ name, back }) => `<li>${name}: ${back}</li>`).join('\n')}
</ul>
</main>
</body>
</html>
`
}

function systemHtml({ name, compare, trust }: System): string {
  return `<details><summary>${name}</summary>
<ol>
${trust.map((step) => `<li>${step}</li>`).join('\n')}
</ol>
<p><b>To compare:</b> ${compare}</p>
</details>`
}

function escaped(text: string): string {
  const names: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' }
  return text.replace(/[&<>"']/g, (letter) => names[letter]!)
}
