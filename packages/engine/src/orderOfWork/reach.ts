import { hasReading, type LastTool, swivelRange, wrenchSetting } from '../joints/wrench.ts'
import { type Interval, intervalOf } from '../quantity/interval.ts'
import type { BenchTool, Face, ToolForm } from '../unit.ts'
import type { ReachAnswer, ReachedBy } from './answer.ts'

const AS_LAST: Partial<Record<ToolForm, LastTool>> = {
  'ratchet wrench': 'ratchet wrench',
  'impact driver': 'impact driver',
}

/**
 * For each hole whose `reach` is stated: the tools of each stage with what each does to the final torque (N·m). A crow-foot changes the setting of the
 * wrench, a swivel lets the torque at the bolt swing in each turn, a straight extension changes nothing, and a ratchet wrench, a driver or a hand has no reading.
 * @source joints/wrench.ts, where each formula has its own
 */
export function reachOf(face: Face, tools: readonly BenchTool[] = []): ReachAnswer[] {
  const byId = new Map(tools.map((tool) => [tool.id, tool]))
  return face.holes.flatMap((hole): ReachAnswer[] => {
    if (hole.reach === undefined) return []
    const stated = hole.torque ?? face.torque
    const torque = stated === undefined ? undefined : intervalOf(stated, 'torque')
    const by = (name: string): ReachedBy => reachedBy(name, byId.get(name), torque)
    const runDown = (hole.reach.runDown ?? []).map(by)
    const final = (hole.reach.final ?? []).map(by)
    const finding = findingOf(final, byId)
    return [
      {
        face: face.id,
        hole: hole.id,
        ...(torque === undefined ? {} : { torque }),
        runDown,
        final,
        ...(finding === undefined ? {} : { finding }),
      },
    ]
  })
}

/** True when a torque may be written down for this form of tool. */
export function formHasReading(form: ToolForm): boolean {
  return form !== 'by hand' && hasReading(AS_LAST[form] ?? 'torque wrench')
}

function reachedBy(name: string, tool: BenchTool | undefined, torque: Interval | undefined): ReachedBy {
  if (tool === undefined) return { tool: name }
  const { form, angle = 0 } = tool
  const reading = formHasReading(form)
  const as = { tool: name, form, reading }
  if (torque === undefined || !reading) return as
  if (form === 'swivel') {
    return {
      ...as,
      setting: torque,
      atBolt: { lo: swivelRange(torque.lo, angle).lo, hi: swivelRange(torque.hi, angle).hi },
    }
  }
  if (form !== 'crow-foot') return { ...as, setting: torque, atBolt: torque }
  if (tool.lever === undefined || tool.reach === undefined) return as
  const extension = { lever: tool.lever, reach: tool.reach, angle }
  const [lo, hi] = [wrenchSetting(torque.lo, extension), wrenchSetting(torque.hi, extension)]
  return lo === undefined || hi === undefined ? as : { ...as, setting: { lo, hi }, atBolt: torque }
}

function findingOf(final: readonly ReachedBy[], tools: ReadonlyMap<string, BenchTool>): ReachAnswer['finding'] {
  const silent = final.filter(({ reading }) => reading === false)
  if (silent.length > 0) return silent.length === final.length ? 'only by feel' : 'finish with another tool'
  const crowFeet = final.map(({ tool }) => tools.get(tool)).filter((tool) => tool?.form === 'crow-foot')
  if (crowFeet.some((tool) => tool!.lever === undefined || tool!.reach === undefined))
    return 'no setting: lever or reach not stated'
  const short = crowFeet.some(
    (tool) => wrenchSetting(1, { lever: tool!.lever!, reach: tool!.reach!, angle: tool!.angle ?? 0 }) === undefined,
  )
  return short ? 'no setting: it reaches the hand' : undefined
}
