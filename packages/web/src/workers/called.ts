/**
 * The engine speaks of kinds by their ids, which on this page are counted up ("b3") and say nothing to a person. So it is asked with kinds
 * called by their names, and its answer is brought back to ids; its sentences keep the names.
 */
import type { FaceAnswer, Kind, Statement, Unit } from '@gripbook/engine'
import { namesOf } from '../face/kindNames.ts'

export type Called = {
  unit: Unit
  /** Names of a face's tray by id, and ids by name. */
  nameOf: (face: string, kind: string) => string
  idOf: (face: string, name: string) => string
}

/** The unit with every kind called by its name; a name that is taken already gets the id beside it. */
export function calledByName(unit: Unit): Called {
  const shared = namesFor(unit.kinds ?? [], new Set())
  const own = new Map(
    unit.faces.map((face) => [face.id, namesFor(face.kinds ?? [], new Set([...shared.values(), ...reservedIn(face)]))]),
  )
  const nameOf = (face: string, kind: string) => own.get(face)?.get(kind) ?? shared.get(kind) ?? kind
  const back = new Map(
    [...own].map(([face, names]) => [face, new Map([...shared, ...names].map(([id, name]) => [name, id]))]),
  )
  const renamed = (kinds: readonly Kind[], name: (id: string) => string) =>
    kinds.map((kind) => ({ ...kind, id: name(kind.id) }))
  return {
    nameOf,
    idOf: (face, name) => back.get(face)?.get(name) ?? name,
    unit: {
      ...unit,
      ...(unit.kinds === undefined ? {} : { kinds: renamed(unit.kinds, (id) => shared.get(id)!) }),
      faces: unit.faces.map((face) => {
        const name = (id: string) => nameOf(face.id, id)
        return {
          ...face,
          ...(face.kinds === undefined ? {} : { kinds: renamed(face.kinds, name) }),
          holes: face.holes.map(({ asFound, unitsBefore, ...hole }) => ({
            ...hole,
            ...(asFound === undefined ? {} : { asFound: asFound === NONE ? NONE : name(asFound) }),
            ...(unitsBefore === undefined ? {} : { unitsBefore: keyed(unitsBefore, name) }),
          })),
          ...(face.ranks === undefined
            ? {}
            : {
                ranks: face.ranks.map((rank) =>
                  rank.quantity === 'length' ? { ...rank, less: name(rank.less), more: name(rank.more) } : rank,
                ),
              }),
          ...(face.trials === undefined
            ? {}
            : { trials: face.trials.map((trial) => ({ ...trial, kind: name(trial.kind) })) }),
        }
      }),
    },
  }
}

/** A face and what was computed for it, with kinds called by their names: for drawings. */
export function faceByName(
  unit: Unit,
  { id }: { id: string },
  answer: FaceAnswer | null,
): { unit: Unit; face: Unit['faces'][number]; answer?: FaceAnswer; nameOf: (kind: string) => string } {
  const called = calledByName(unit)
  const nameOf = (kind: string) => called.nameOf(id, kind)
  return {
    unit: called.unit,
    face: called.unit.faces.find((face) => face.id === id)!,
    ...(answer === null ? {} : { answer: renamedAnswer(answer, nameOf) }),
    nameOf,
  }
}

const NONE = 'none'

/** An answer with every kind in it renamed; sentences stay as they are. */
export function renamedAnswer(answer: FaceAnswer, name: (kind: string) => string): FaceAnswer {
  const kind = (id: string) => (id === NONE ? NONE : name(id))
  const statement = (said: Statement): Statement => {
    if (said.what === 'count' || (said.what === 'reading' && said.place === 'kind'))
      return { ...said, of: kind(said.of) }
    if (said.what === 'rank' && said.quantity === 'length')
      return { ...said, less: kind(said.less), more: kind(said.more) }
    return said.what === 'trial' ? { ...said, kind: kind(said.kind) } : said
  }
  const conflict = (one: NonNullable<FaceAnswer['conflict']>) => ({
    ...one,
    kinds: one.kinds.map(kind),
    doubt: one.doubt.map((doubt) => ({ ...doubt, statements: doubt.statements.map(statement) })),
  })
  return {
    ...answer,
    holes: Object.fromEntries(
      Object.entries(answer.holes).map(([id, hole]) => [
        id,
        {
          ...hole,
          may: hole.may.map(kind),
          likely: keyed(hole.likely, kind),
          best: hole.best === null ? null : kind(hole.best),
          ...(hole.asFound === undefined ? {} : { asFound: { ...hole.asFound, kind: kind(hole.asFound.kind) } }),
        },
      ]),
    ),
    pairs: answer.pairs.map((pair) => ({ ...pair, kind: kind(pair.kind) })),
    conflict: answer.conflict === null ? null : conflict(answer.conflict),
    ...(answer.furtherConflicts === undefined ? {} : { furtherConflicts: answer.furtherConflicts.map(conflict) }),
    changes: {
      ...answer.changes,
      cycles: answer.changes.cycles.map((round) =>
        round.map((move) => ({ ...move, from: kind(move.from), to: kind(move.to) })),
      ),
    },
    leftOver: keyed(answer.leftOver, kind),
    ...(answer.leftOverFits === undefined ? {} : { leftOverFits: keyed(answer.leftOverFits, kind) }),
    next:
      answer.next === null
        ? null
        : {
            ...answer.next,
            reading: {
              ...answer.next.reading,
              ...(answer.next.reading.place === 'kind' ? { of: kind(answer.next.reading.of) } : {}),
              ...(answer.next.reading.kind === undefined ? {} : { kind: kind(answer.next.reading.kind) }),
            },
          },
  }
}

function namesFor(kinds: readonly Kind[], taken: Set<string>): Map<string, string> {
  const names = new Map<string, string>()
  for (const [id, long] of namesOf(kinds).long) {
    let name = long === NONE ? `${long} ${id}` : long
    while (taken.has(name)) name = `${name} ${id}`
    taken.add(name)
    names.set(id, name)
  }
  return names
}

/** What holes speak of and no tray has keeps its id, so no name may be the same. */
function reservedIn(face: Unit['faces'][number]): string[] {
  const own = new Set((face.kinds ?? []).map(({ id }) => id))
  return face.holes.flatMap(({ asFound }) => (asFound === undefined || own.has(asFound) ? [] : [asFound]))
}

function keyed<T>(record: Readonly<Record<string, T>>, name: (key: string) => string): Record<string, T> {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [name(key), value]))
}
