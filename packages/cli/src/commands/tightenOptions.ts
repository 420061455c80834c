/** What is asked of `gripbook tighten`, read from its options. */

/** Passes beyond this are no plan that a person would follow. */
const MOST_PASSES = 20

export type Figures = { ok: true; value: number[] } | { ok: false; why: string }
export type Share = { ok: true; value: number } | { ok: false; why: string }

/** "30,60,100" in per cent of the final torque as shares of it, 0 to 1: rising, the last one 100. */
export function readPasses(text: string): Figures {
  const shares = text.split(',').map((part) => percentIn(part))
  const example = 'Write them in per cent of the final torque, rising, the last one 100: --passes 30,60,100.'
  const wrong = (why: string): Figures => ({ ok: false, why: `--passes ${JSON.stringify(text)}: ${why} ${example}` })
  if (shares.length > MOST_PASSES) return wrong(`more than ${MOST_PASSES} passes.`)
  if (shares.some((share) => share === undefined || share <= 0 || share > 1))
    return wrong('each pass is a figure above 0 and at most 100.')
  const known = shares as number[]
  if (known.some((share, i) => i > 0 && share <= known[i - 1]!)) return wrong('a pass is not above the one before it.')
  if (known.at(-1) !== 1) return wrong('the last pass is not at full torque.')
  return { ok: true, value: known }
}

/** "5" or "5 %" as a share, 0.05: how uneven the clamp may be, greatest less least over the mean. */
export function readSpread(text: string): Share {
  const share = percentIn(text)
  return share !== undefined && share > 0 && share <= 1
    ? { ok: true, value: share }
    : {
        ok: false,
        why: `--spread ${JSON.stringify(text)} is no figure above 0 and at most 100. Write it in per cent: --spread 5.`,
      }
}

function percentIn(text: string): number | undefined {
  const figure = /^\s*(\d+(?:\.\d+)?)\s*%?\s*$/.exec(text)?.[1]
  return figure === undefined ? undefined : Number(figure) / 100
}
