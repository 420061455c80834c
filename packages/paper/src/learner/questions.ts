/** What a learner is asked about a face, and what the answer says to it. */
import type { Face, FaceAnswer, Hole, Kind, Pair } from '@gripbook/engine'
import { boltName } from '@gripbook/print'
import { words } from '../words.ts'

export type Question = { hole: Hole; text: string; answer: string[] }

/** More than so many make no sheet that a learner finishes. */
export const MOST_QUESTIONS = 4

/** So many of them at most are of holes where something is wrong or open: the first thing to learn is why a bolt is right. */
const MOST_OF_DOUBT = 3

/**
 * The holes that teach most, in the order of the face: first those whose bolt must change, then the contradicted and the open ones, then one for each kind that
 * belongs somewhere, then whatever is left.
 */
export function questionsOf(face: Face, tray: ReadonlyMap<string, Kind>, answer: FaceAnswer): Question[] {
  const kindsAsked = new Set<string>()
  const rank = ({ id }: Hole): number => {
    const here = answer.holes[id]
    if (here?.asFound?.verdict === 'must change') return 0
    if (here?.verdict === 'contradicted') return 1
    if (here?.verdict === 'open') return 2
    const kind = here?.may[0]
    if (kind === undefined || kindsAsked.has(kind)) return 4
    kindsAsked.add(kind)
    return 3
  }
  const ranked = face.holes.map((hole, i) => ({ hole, i, rank: rank(hole) }))
  const inRank = ranked.sort((a, b) => a.rank - b.rank || a.i - b.i)
  const doubtful = inRank.filter((each) => each.rank < 3)
  const sure = inRank.filter((each) => each.rank >= 3)
  return [...doubtful.slice(0, MOST_OF_DOUBT), ...sure, ...doubtful.slice(MOST_OF_DOUBT)]
    .slice(0, MOST_QUESTIONS)
    .sort((a, b) => a.i - b.i)
    .map(({ hole }) => ({ hole, text: textOf(hole, tray, answer), answer: answerTo(hole, tray, answer) }))
}

function textOf({ id, asFound }: Hole, tray: ReadonlyMap<string, Kind>, answer: FaceAnswer): string {
  const here = answer.holes[id]
  const { which, stay, could, matter } = words.learner
  if (here?.verdict === 'contradicted') return matter(id)
  if (here?.verdict === 'open') return could(id)
  if (here?.asFound?.verdict === 'must change' && asFound !== undefined && tray.has(asFound))
    return stay(id, boltName(asFound, tray))
  return which(id)
}

function answerTo({ id }: Hole, tray: ReadonlyMap<string, Kind>, answer: FaceAnswer): string[] {
  const here = answer.holes[id]
  const said = words.learner
  const pairs = answer.pairs.filter(({ hole }) => hole === id)
  const named = (kind: string) => boltName(kind, tray)
  if (here?.verdict === 'settled' && here.may[0] !== undefined) {
    const [kind] = here.may
    const own = pairs.find((pair) => pair.kind === kind)
    return [
      ...(own?.verdict === 'fits'
        ? [said.belongsAsIt(named(kind), own.why)]
        : [said.belongs(named(kind)), ...(own ? [said.other(named(kind), own.why)] : [])]),
      ...othersOf(pairs, kind, named),
      here.proven === true ? said.sure : said.trayCounts,
    ]
  }
  if (here?.verdict === 'open') {
    const next = answer.next?.settles.includes(id) ? [said.next(answer.next.why)] : []
    return [
      said.couldBe(here.may.map(named).join(', ')),
      ...othersOf(
        pairs.filter(({ kind }) => !here.may.includes(kind)),
        '',
        named,
      ),
      ...next,
    ]
  }
  const conflict = [answer.conflict, ...(answer.furtherConflicts ?? [])].find((one) => one?.holes.includes(id))
  const whys = [here?.why, conflict?.why, conflict?.doubt[0]?.why].filter((why) => why !== undefined)
  return whys.length === 0 ? [said.nothing] : [...new Set(whys)].map((why) => `${why}.`)
}

/** Why each other kind with the hole's thread is not the one, the nearest first. */
function othersOf(pairs: readonly Pair[], kind: string, named: (kind: string) => string): string[] {
  const near = ({ margin }: Pair) => (typeof margin === 'number' ? margin : Number.NEGATIVE_INFINITY)
  return pairs
    .filter((pair) => pair.kind !== kind && pair.line !== 'thread')
    .sort((a, b) => near(b) - near(a))
    .map(({ verdict, kind: other, why }) => {
      if (verdict === 'cannot') return words.learner.other(named(other), why)
      return verdict === 'fits' ? words.learner.spared(named(other)) : words.learner.mightFit(named(other))
    })
}
