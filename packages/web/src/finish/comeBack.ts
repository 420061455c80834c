/** A unit that comes back: what the record of its build answers, and what it cannot. */
import { type FoldedUnit, fold, upTo } from '@gripbook/record'
import { sayIn } from '../unit/sayIn.ts'
import { standingOf } from '../unit/standing.ts'
import { words } from '../words/finish.ts'
import { lies, type Row, rowsOf } from './figures.ts'

/** The unit as it was when it was released last; null: it never was. */
export function builtUnit(folded: FoldedUnit): FoldedUnit | null {
  const release = standingOf(folded).findLast(({ type }) => type === 'unit-released')
  if (release === undefined) return null
  return fold(folded.id, upTo(release.body.heads as Record<string, number>, folded.entries))
}

/** What was found to be behind a complaint. */
export type Found = { event: string; who: string; at: string; found: string; done: string | null; face: string | null }

/** A complaint with which the unit came back, and what was found. `asked`: the next release waits for it. */
export type ComeBack = { event: string; who: string; at: string; complaint: string; asked: boolean; answers: Found[] }

/** In the order of the record. */
export function comeBacksOf(folded: Pick<FoldedUnit, 'entries' | 'undone'>): ComeBack[] {
  const standing = standingOf(folded)
  const found = standing.filter(({ type }) => type === 'come-back-answered')
  return standing.flatMap(({ id: event, type, who, at, body }): ComeBack[] => {
    if (type !== 'came-back') return []
    const answers = found.flatMap((one): Found[] =>
      one.body.cameBack === event
        ? [
            {
              event: one.id,
              who: one.who,
              at: one.at,
              found: String(one.body.found),
              done: textOr(one.body.done),
              face: textOr(one.body.face),
            },
          ]
        : [],
    )
    return [{ event, who, at, complaint: String(body.complaint), asked: body.toAnswer === true, answers }]
  })
}

/** Those of now: since the unit was released last. None while it is released. */
export function comeBacksNow(folded: FoldedUnit): ComeBack[] {
  if (folded.work.released !== undefined) return []
  const standing = standingOf(folded)
  const since = new Set(
    standing.slice(standing.findLastIndex(({ type }) => type === 'unit-released') + 1).map(({ id }) => id),
  )
  return comeBacksOf(folded).filter(({ event, asked, answers }) => since.has(event) || (asked && answers.length === 0))
}

export function sayFound({ found, done, face }: Pick<Found, 'found' | 'done' | 'face'>, { unit }: FoldedUnit): string {
  const at = face === null ? null : (unit.faces.find(({ id }) => id === face)?.name ?? face)
  return words.foundText(found, at, done)
}

export type Answer = { event?: string; speaksOf: boolean } & (
  | { is: 'figure'; row: Row; why: 'outside' | 'edge' | 'waived' | 'no baseline' | 'not after' | 'changed' }
  /** At as many places as one reason was given for. */
  | { is: 'override'; gate: string; reason: string; face: string | null; holes: string[]; who: string }
  | { is: 'kind changed'; face: string; hole: string; found: string; placed: string }
  | { is: 'part changed'; part: string; name: string; fate: string; by: string | null }
  | { is: 'by feel'; face: string; holes: string[] }
  | { is: 'resistance'; face: string; hole: string; said: string }
  | { is: 'came back'; complaint: string; found: string[] }
  | { is: 'since release'; event: string; said: string }
)

type Override = Answer & { is: 'override' }

/** Answers of the build, those that speak of the same as the complaint first. `now`: the unit as it stands, for what was written since. */
export function answersOf(built: FoldedUnit, complaint: string, now: FoldedUnit = built): Answer[] {
  const asked = wordsOf(complaint)
  const speaks = (...texts: (string | null | undefined)[]) =>
    texts.some((text) => [...wordsOf(text ?? '')].some((word) => asked.has(word)))
  const say = sayIn(now)
  const faceName = (id: string | null) => built.unit.faces.find((face) => face.id === id)?.name ?? id
  const overrides: Override[] = []
  const answers: Answer[] = [
    ...comeBacksOf(built).map((back): Answer => {
      const found = back.answers.map((answer) => sayFound(answer, built))
      return {
        is: 'came back',
        event: back.event,
        complaint: back.complaint,
        found,
        speaksOf: speaks(back.complaint, ...found),
      }
    }),
    ...rowsOf(built).flatMap((row): Answer[] => {
      const why = figureWhy(row)
      return why === null ? [] : [{ is: 'figure', row, why, speaksOf: speaks(row.reading, faceName(row.face)) }]
    }),
    ...standingOf(built).flatMap((entry): Answer[] => {
      const { id: event, type, who, body } = entry
      const at = { face: textOr(body.face), hole: textOr(body.hole) }
      if (type === 'gate-overridden') {
        const reason = String(body.reason)
        const same = overrides.find(
          (one) => one.gate === body.gate && one.reason === reason && one.face === at.face && one.who === who,
        )
        if (same !== undefined) {
          if (at.hole !== null && !same.holes.includes(at.hole)) same.holes.push(at.hole)
          return []
        }
        const override: Override = {
          is: 'override',
          gate: String(body.gate),
          reason,
          face: at.face,
          holes: at.hole === null ? [] : [at.hole],
          who,
          event,
          speaksOf: speaks(reason, faceName(at.face)),
        }
        overrides.push(override)
        return [override]
      }
      if (type === 'resistance-felt' && at.face !== null && at.hole !== null) {
        const speaksOf = speaks(String(body.feel), faceName(at.face))
        return [{ is: 'resistance', face: at.face, hole: at.hole, said: String(body.feel), event, speaksOf }]
      }
      return []
    }),
    ...built.unit.faces.flatMap(({ id: face, holes }) =>
      holes.flatMap(({ id: hole, asFound }): Answer[] => {
        const placed = built.faces[face]?.holes[hole]?.placed
        if (asFound === undefined || placed === undefined || placed.value === asFound) return []
        return [
          {
            is: 'kind changed',
            face,
            hole,
            found: asFound,
            placed: placed.value,
            event: placed.event,
            speaksOf: speaks(faceName(face)),
          },
        ]
      }),
    ),
    ...Object.entries(built.things.part).flatMap(([part, { fate, name, what, replacedBy }]): Answer[] => {
      if (fate?.value !== 'replaced' && fate?.value !== 'written off') return []
      const called = String(name?.value ?? what?.value ?? part)
      const by = fate.value === 'replaced' && replacedBy !== undefined ? String(replacedBy.value) : null
      return [
        { is: 'part changed', part, name: called, fate: fate.value, by, event: fate.event, speaksOf: speaks(called) },
      ]
    }),
    ...Object.entries(built.faces).flatMap(([face, work]): Answer[] => {
      const holes = Object.keys(work.holes).filter((hole) => {
        const { final } = work.holes[hole]!.steps
        return final !== undefined && final.value.torque === undefined && final.value.angle === undefined
      })
      return holes.length === 0 ? [] : [{ is: 'by feel', face, holes, speaksOf: speaks(faceName(face)) }]
    }),
    ...now.sinceRelease.flatMap((event): Answer[] => {
      const entry = now.entries.find(({ id }) => id === event)
      return entry === undefined ? [] : [{ is: 'since release', event, said: say(entry), speaksOf: false }]
    }),
  ]
  return answers.toSorted((a, b) => Number(b.speaksOf) - Number(a.speaksOf))
}

/** What a figure has to say for itself; null: read before and after, and inside its limit both times, or without a limit as it was. */
function figureWhy({ before, after, during, limit, waived }: Row): (Answer & { is: 'figure' })['why'] | null {
  const last = after ?? during
  if (waived !== null) return 'waived'
  if (last === null) return 'not after'
  const at = lies(last, limit)
  if (at === 'outside' || at === 'edge') return at
  if (before === null) return 'no baseline'
  const asItWas = before.value === last.value && before.unit === last.unit
  return asItWas || lies(before, limit) === 'inside' ? null : 'changed'
}

const textOr = (value: unknown): string | null => (typeof value === 'string' ? value : null)

/** Words that carry something, without their endings: "slips" and "slip" are the same. */
function wordsOf(text: string): Set<string> {
  const found = text.toLowerCase().match(/[\p{L}\p{M}\p{N}]+/gu) ?? []
  return new Set(
    found
      .filter((word) => word.length >= 4 || /\p{Lo}/u.test(word))
      .map((word) => (word.length > 4 ? word.replace(/(?:ing|es|s)$/, '') : word)),
  )
}
