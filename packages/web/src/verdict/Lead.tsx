/** The one sentence of a face, and under it everything that is to be done, each with its why. */
import type { FaceAnswer, Kind } from '@gripbook/engine'
import type { FaceWork } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { countsOf, type Task, tasksOf } from '../face/lead.ts'
import { Icon, type IconName } from '../look/icons.tsx'
import { sentence, words } from '../words/index.ts'
import { handsOf, sayNothingToDo, sayTask } from './sayTask.ts'
import './Lead.css'

type Props = {
  answer: FaceAnswer
  work: FaceWork | undefined
  kinds: readonly Kind[]
  named: (kind: string) => string
  onHole: (hole: string) => void
  onMeasure: () => void
}

const ICONS: Record<Task['do'], IconName> = {
  doubt: 'warning',
  move: 'swap',
  get: 'plus',
  measure: 'measure',
  'lay aside': 'tray',
}

export function Lead({ answer, work, kinds, named, onHole, onMeasure }: Props) {
  const tasks = tasksOf(answer, work)
  const { settled, open, contradicted } = countsOf(answer)
  return (
    <section class="lead" aria-live="polite">
      <p class="lead__counts">
        {words.verdict.counts(settled, open, contradicted)}
        {answer.likelihood.method === 'sampled' && answer.likelihood.standardError !== undefined && (
          <span class="quiet"> {words.verdict.sampled(answer.likelihood.standardError.toFixed(3))}</span>
        )}
      </p>
      {tasks.length === 0 ? (
        <p class="lead__calm">
          <Icon name="tick" />
          {sayNothingToDo(answer)}
        </p>
      ) : (
        <ul class="lead__tasks">
          {tasks.map((task) => (
            <TaskLine
              key={keyOf(task)}
              task={task}
              around={{ answer, kinds, named }}
              onHole={onHole}
              onMeasure={onMeasure}
            />
          ))}
        </ul>
      )}
    </section>
  )
}

type LineProps = {
  task: Task
  around: { answer: FaceAnswer; kinds: readonly Kind[]; named: (kind: string) => string }
  onHole: (hole: string) => void
  onMeasure: () => void
}

function TaskLine({ task, around, onHole, onMeasure }: LineProps) {
  const [why, setWhy] = useState(false)
  return (
    <li class={`task task--${task.do.replace(' ', '-')}`}>
      <div class="task__line">
        <Icon name={ICONS[task.do]} />
        <p class="task__words">{sayTask(task, around)}</p>
        {task.do === 'measure' && (
          <button type="button" class="button button--act task__act" onClick={onMeasure}>
            {words.verdict.take}
          </button>
        )}
        <button type="button" class="button button--plain task__why" aria-expanded={why} onClick={() => setWhy(!why)}>
          {words.verdict.why}
          <span class="unseen">: {sayTask(task, around)}</span>
        </button>
      </div>
      {task.do === 'move' && handsOf(task.round, around.named).length > 1 && (
        <ol class="task__hands">
          {handsOf(task.round, around.named).map((hand) => (
            <li key={hand}>{hand}</li>
          ))}
        </ol>
      )}
      {why && <Reasons task={task} around={around} onHole={onHole} />}
    </li>
  )
}

function Reasons({ task, around, onHole }: Omit<LineProps, 'onMeasure'>) {
  const { answer } = around
  const holes = holesOf(task)
  return (
    <div class="task__reasons">
      {task.do === 'measure' && <p>{sentence(task.next.why)}</p>}
      {task.do === 'get' && <p>{sentence(task.wanted.why)}</p>}
      {task.do === 'doubt' && (
        <>
          <h3>{words.verdict.doubtTitle}</h3>
          <ol class="task__doubts">
            {task.conflict.doubt.map(({ why, likely }) => (
              <li key={why}>
                <b>{words.verdict.likely(likely)}</b> {sentence(why)}
              </li>
            ))}
          </ol>
        </>
      )}
      {task.do === 'move' &&
        task.round.map(({ hole }) => {
          const asFound = answer.holes[hole]?.asFound
          return asFound === undefined ? null : (
            <p key={hole}>
              <b>{words.face.hole(hole)}</b> {sentence(asFound.why)}
            </p>
          )
        })}
      {task.do === 'lay aside' && <p>{words.verdict.leftOverWhy}</p>}
      {holes.length > 0 && (
        <div class="buttons">
          {holes.map((hole) => (
            <button key={hole} type="button" class="button" onClick={() => onHole(hole)}>
              {words.face.hole(hole)}
            </button>
          ))}
        </div>
      )}
    </div>
  )
}

function holesOf(task: Task): string[] {
  if (task.do === 'doubt') return task.conflict.holes
  if (task.do === 'move') return task.round.map(({ hole }) => hole)
  if (task.do === 'get') return [task.wanted.hole]
  if (task.do === 'measure') return task.next.reading.place === 'hole' ? [task.next.reading.of] : []
  return []
}

function keyOf(task: Task): string {
  return `${task.do} ${holesOf(task).join(' ')} ${task.do === 'lay aside' ? task.kind : ''}`
}
