import { type Interval, type WrenchFinding, writeInterval } from '@gripbook/engine'
import {
  type AngleCheck,
  type BenchAnswer,
  type SwivelCheck,
  swivelLeavesBand,
  type TurnsCheck,
  type WrenchCheck,
} from '../commands/benchChecks.ts'
import { figure, kilonewtons, newtonMetres, percentStated, range, wrap } from './jointFigures.ts'
import type { Paint } from './paint.ts'

/** One finding: a head to be seen at a glance, and what stands behind it. */
type Finding = { head: string; paint: Paint; why: string[] }

/** What was found beside the torque, a head and its reasons for each. */
export function benchLines(
  { wrench, swivel, angle, turns, reuse, socket }: BenchAnswer,
  wide: number,
  paint: (text: string, p: Paint) => string,
): string[] {
  const findings: Finding[] = [
    ...(wrench ? [wrenchFinding(wrench)] : []),
    ...(swivel ? [swivelFinding(swivel)] : []),
    ...(angle ? [angleFinding(angle)] : []),
    ...(turns ? turnsFindings(turns) : []),
    ...(reuse ? [reuseFinding(reuse)] : []),
    ...(socket ? [socketFinding(socket)] : []),
  ]
  return findings.flatMap(({ head, paint: colour, why }) => [
    ...wrap(head, wide).map((line) => paint(line, colour)),
    ...why.flatMap((text) => wrap(text, wide, '  ')),
  ])
}

/** Where the figures beside the torque come from. */
export function benchSources({ wrench, swivel, angle, turns, socket }: BenchAnswer): string[] {
  return [
    ...(wrench ? ['fitness of a wrench: ISO 6789 (2003 wording), checked at 20, 60 and 100 % of its range'] : []),
    ...(swivel ? ['swivel: kinematics of the single universal joint, no loss in it counted'] : []),
    ...(angle?.sources ?? []),
    ...(turns ? ['turns: (stick-out − mouth − lead)/pitch, the lead anything from none of the tip to all of it'] : []),
    ...(turns?.causes ? ['why a bolt stopped: common practice, no source'] : []),
    ...(socket ? ['heads: the product standards named; a maker may use others'] : []),
  ]
}

function wrenchFinding(wrench: WrenchCheck): Finding {
  const { fit, findings, deviation, range: label, calibrated, due } = wrench
  const until = calibrated === undefined || due === undefined ? '' : `, calibrated ${calibrated}, due ${due}`
  return {
    head: fit ? 'WRENCH FIT' : 'WRENCH NOT FIT',
    paint: fit ? (findings.length > 0 ? 'yellow' : 'green') : 'red',
    why: [
      `${newtonMetres(label)}, ±${percentStated(deviation)}${until}.`,
      ...findings.map((finding) => `${FINDING[finding](wrench)}.`),
    ],
  }
}

const setTo = ({ setTo: setting }: WrenchCheck): string => newtonMetres(setting)

const FINDING: Record<WrenchFinding, (wrench: WrenchCheck) => string> = {
  'below its range': (wrench) => `Below its range: it is to be set to ${setTo(wrench)}`,
  'above its range': (wrench) => `Above its range: it is to be set to ${setTo(wrench)}`,
  'in the lowest fifth, where it is not checked': (wrench) =>
    `Set to ${setTo(wrench)} it is in its lowest fifth, where it is not checked: a smaller wrench is better`,
  'no calibration date': () => 'No calibration date: read its label or certificate, and give it with --calibrated',
  'calibration date not readable': () => 'Its calibration date is not readable',
  'calibrated after today': ({ today }) => `Calibrated after today, ${today}: look at the label or the clock`,
  'out of calibration': ({ today }) => `Out of calibration: today is ${today}`,
}

function swivelFinding(swivel: SwivelCheck): Finding {
  const { angle, atBolt, clamp, verdicts } = swivel
  const leaves = swivelLeavesBand(swivel)
  const ends = [
    { torque: atBolt.lo, verdict: verdicts.least[0]! },
    { torque: atBolt.hi, verdict: verdicts.most[0]! },
  ]
  return {
    head: `SWIVEL AT ${figure(angle)}°${leaves ? ' LEAVES THE USUAL BAND' : ''}`,
    paint: leaves ? 'yellow' : 'green',
    why: [
      `The torque at the bolt swings from ${newtonMetres(atBolt)} in each turn, clamp load ${kilonewtons(clamp)}: a straight extension bar does not do that.`,
      ...ends
        .filter(({ verdict: { verdict } }) => verdict !== 'in the usual band')
        .map(
          ({ torque, verdict: { verdict, why } }) =>
            `At ${newtonMetres({ lo: torque, hi: torque })} ${verdict}: ${why}.`,
        ),
    ],
  }
}

function angleFinding(angle: AngleCheck): Finding {
  const {
    degrees,
    clamped,
    clampedMaterial,
    tappedMaterial,
    stiffness,
    added,
    total,
    yieldLoad,
    yields,
    class: bolt,
  } = angle
  const turned = degrees.lo === degrees.hi ? figure(degrees.lo) : `${figure(degrees.lo)} to ${figure(degrees.hi)}`
  const holds = `${(yieldLoad / 1000).toFixed(1)} kN`
  const sum = total.lo === added.lo && total.hi === added.hi ? '' : `, ${kilonewtons(total)} with the torque before it`
  const stiff = (of: Interval): string => range({ lo: of.lo / 1000, hi: of.hi / 1000 }, 0)
  return {
    head: `ANGLE ${turned}°${YIELDS[yields]}`,
    paint: yields === 'no' ? 'green' : yields === 'at the high end' ? 'yellow' : 'red',
    why: [
      yields === 'over the whole range'
        ? `From snug on it would add ${kilonewtons(added)} of clamp load${sum}, if nothing yielded.`
        : `Adds ${kilonewtons(added)} of clamp load from snug on${sum}, while all stays elastic and the faces do not settle.`,
      `The ${bolt.name} bolt yields from ${holds} in plain tension${YIELDED[yields]}.`,
      ...(bolt.assumed === undefined ? [] : [`${capital(bolt.assumed)}. Read the head mark.`]),
      `Clamped ${writeInterval(clamped)} of ${clampedMaterial}, hole in ${tappedMaterial}: bolt ${stiff(stiffness.bolt)} kN/mm, parts ${stiff(stiffness.parts)} kN/mm.`,
    ],
  }
}

const YIELDS: Record<AngleCheck['yields'], string> = {
  no: '',
  'at the high end': ' MAY YIELD THE BOLT',
  'over the whole range': ' YIELDS THE BOLT',
}

const IF_YIELDED = 'right only where the manual wants that angle, and then the bolt is used once'
const YIELDED: Record<AngleCheck['yields'], string> = {
  no: '',
  'at the high end': ` and then takes little more: ${IF_YIELDED}`,
  'over the whole range': ` and takes little more: expect about that, ${IF_YIELDED}`,
}

function turnsFindings(turns: TurnsCheck): Finding[] {
  const { expected, toBottom, bottomsFirst, counted, rest, causes } = turns
  const bottoms = bottomsFirst === 'sure' ? 'TOO LONG FOR THIS HOLE' : undefined
  return [
    {
      head: bottoms ?? `${range(expected, 1)} TURNS TO SEAT`,
      paint: bottoms ? 'red' : bottomsFirst === 'possible' ? 'yellow' : 'green',
      why: [
        `From the first bite of the thread the head seats after ${range(expected, 1)} turns of ${figure(turns.pitch)} mm; count them.`,
        ...(toBottom ? [bottomWords(toBottom, bottomsFirst)] : []),
      ],
    },
    ...(counted === undefined || rest === undefined || !causes ? [] : [stopFinding(counted, rest, causes)]),
  ]
}

function bottomWords(toBottom: Interval, first: TurnsCheck['bottomsFirst']): string {
  const after = `The tip meets the bottom after ${range(toBottom, 1)} turns`
  if (first === 'sure') return `${after}, before the head seats.`
  return first === 'possible' ? `${after}: that may be before the head seats, measure again.` : `${after}.`
}

function stopFinding(counted: number, rest: string, causes: NonNullable<TurnsCheck['causes']>): Finding {
  const [likeliest, ...others] = causes
  const seated = likeliest!.cause === 'seated'
  return {
    head: (rest === 'head on its seat' ? likeliest!.cause : `stopped early: ${likeliest!.cause}`).toUpperCase(),
    paint: seated ? 'green' : 'red',
    why: [
      `Came to rest after ${figure(counted)} turns, ${rest}: ${likeliest!.why}.`,
      ...others.map(({ cause, why }) => `Less likely: ${cause}, ${why}.`),
      ...(seated ? [] : ['Find out before any wrench goes on.']),
    ],
  }
}

function reuseFinding({ verdict, why }: NonNullable<BenchAnswer['reuse']>): Finding {
  const stretched = verdict === 'stretched'
  return {
    head: stretched ? 'STRETCHED, NOT TO BE USED AGAIN' : verdict.toUpperCase(),
    paint: stretched ? 'red' : 'green',
    why: [`${capital(why)}.`],
  }
}

function socketFinding({ acrossFlats, fits, fitsThread }: NonNullable<BenchAnswer['socket']>): Finding {
  const list = fits.map(({ thread, form, standard }) => `${thread} (${form}, ${standard})`).join(', ')
  return {
    head: `SOCKET ${figure(acrossFlats)} mm`,
    paint: fitsThread === false || fits.length === 0 ? 'yellow' : 'green',
    why: [
      ...(fits.length === 0 ? ['Fits no standard head that Gripbook knows.'] : [`Fits ${list}.`]),
      ...(fitsThread === false && fits.length > 0
        ? ['None of them is of the thread asked about: measure diameter and pitch.']
        : []),
      ...(fits.length > 0 ? ['A socket alone never names the thread.'] : []),
    ],
  }
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
