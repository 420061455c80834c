/** Why this bolt: the verdict of the hole with its reason, the drawing to scale, and every other bolt of the tray tried in thought. */
import { useState } from 'preact/hooks'
import { PairList } from '../face/PairList.tsx'
import { JointCheck } from '../joint/JointCheck.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { Section } from '../verdict/Section.tsx'
import { words } from '../words/bench.ts'
import { sentence, words as shared } from '../words/index.ts'
import type { Bench } from './useBench.ts'
import '../face/HolePanel.css'

export function WhySheet({ bench, onClose }: { bench: Bench; onClose: () => void }) {
  const { step, face, answer, now, kind, kinds, named } = bench
  const hole = face.holes.find(({ id }) => id === step.hole)
  const [shown, setShown] = useState<string | undefined>(kind?.id)
  const here = hole === undefined ? undefined : answer?.holes[hole.id]
  const title = hole === undefined ? words.why : `${words.why} ${words.hole(hole.id)}`
  return (
    <Sheet title={title} onClose={onClose}>
      {here === undefined || hole === undefined ? (
        <p>{shared.face.noReadingsWhat}</p>
      ) : (
        <>
          <p class={`verdict verdict--${here.verdict}`}>
            <span class="verdict__shape" aria-hidden="true" />
            {shared.verdict.verdicts[here.verdict]}
          </p>
          {here.verdict === 'settled' && here.may[0] !== undefined && (
            <p class="hole__belongs" dir="auto">
              {shared.verdict.belongs(named(here.may[0]))}
            </p>
          )}
          <p>{sentence(here.why)}</p>
          {now.unit !== null && (
            <figure class="hole__drawing">
              <Section
                unit={now.unit}
                face={now.face ?? face}
                hole={hole}
                answer={answer}
                {...(shown === undefined ? {} : { kind: shown })}
              />
            </figure>
          )}
          <PairList
            pairs={answer!.pairs.filter((pair) => pair.hole === hole.id)}
            named={named}
            shown={shown}
            onShow={setShown}
          />
          <JointCheck face={now.face ?? face} hole={hole} kinds={kinds} kind={shown} />
        </>
      )}
      <p class="quiet">{shared.verdict.notPermission}</p>
    </Sheet>
  )
}
