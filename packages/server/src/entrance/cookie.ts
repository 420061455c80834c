/** The cookie that carries a session's token. */
import { parseCookie, stringifySetCookie } from 'cookie'

/** With `__Host-` a browser takes it only over HTTPS, from this very host; on the loopback address there is no HTTPS. */
const nameOf = (secure: boolean): string => (secure ? '__Host-gripbook' : 'gripbook')

export function tokenIn(header: string | undefined, secure: boolean): string | null {
  return parseCookie(header ?? '')[nameOf(secure)] ?? null
}

/** `token` null takes the cookie away. */
export function sessionCookie(token: string | null, seconds: number, secure: boolean): string {
  return stringifySetCookie({
    name: nameOf(secure),
    value: token ?? '',
    httpOnly: true,
    sameSite: 'strict',
    path: '/',
    secure,
    maxAge: token === null ? 0 : seconds,
  })
}
