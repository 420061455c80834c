import type { Board } from '@gripbook/paper'
import type { FoldedUnit } from '@gripbook/record'
import { words } from '../words/finish.ts'
import type { FaceNow } from '../workers/useAnswer.ts'
import { Paper, type Printed } from './Paper.tsx'

/** The bolt board and the learner's sheet of a face. */
export function FacePaper({ folded, now }: { folded: FoldedUnit; now: FaceNow }) {
  const { unit, face, answer } = now
  if (unit === null || face === null) return null
  const name = face.name ?? face.id
  const of = { folded, unit, face, answer }
  return (
    <Paper
      sorts={[
        {
          name: words.boltBoard,
          what: words.boltBoardWhat,
          file: words.fileName(words.boltBoard, name),
          async make(paper) {
            const { boardPaper } = await import('./makePaper.ts')
            return printed(await boardPaper(of, paper, new Date()))
          },
        },
        {
          name: words.learner,
          what: words.learnerWhat,
          file: words.fileName(words.learner, name),
          async make(paper) {
            if (answer === null) return { ok: false, why: words.noAnswer }
            const { learnerPaper } = await import('./makePaper.ts')
            return printed(await learnerPaper({ ...of, answer }, paper, new Date()))
          },
        },
      ]}
    />
  )
}

function printed(board: Board): Printed {
  if (board.ok) return board
  const { fault } = board
  return { ok: false, why: fault.code === 'no-holes' ? words.noHoles : words.tooLarge(fault.sheets) }
}
