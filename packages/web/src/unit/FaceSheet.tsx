import { type Face, MATERIAL_NAMES, writeQuantity } from '@gripbook/engine'
import { type FoldedUnit, faceDescribed, faceStruckOut } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { Choice } from '../parts/Choice.tsx'
import { QuantityField, TextField, type Typed, typedLength, typedTorque } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { useTyped } from '../parts/useTyped.ts'
import { HISTORIES } from '../units/takeIn.ts'
import { given, lines, oneLine } from '../units/texts.ts'
import { words } from '../words/index.ts'
import { changesOf } from './changes.ts'
import { idFromName, idsUsed } from './ids.ts'

type Body = Parameters<typeof faceDescribed>[0]
type Props = { folded: FoldedUnit /** None: a new one. */; face?: Face; onClose: () => void }

/** A face is added, or what is known of it put right. Of one that was there before only what was changed is written. */
export function FaceSheet({ folded, face, onClose }: Props) {
  const { write, go, settings, book } = useApp()
  const shown = textsOf(face, settings)
  // A unit is mostly of one casting: the material of the face before is offered.
  const {
    typed,
    type: put,
    clear,
  } = useTyped(
    `face ${folded.id} ${face?.id ?? ''}`,
    face === undefined ? { ...shown, material: nameOf(folded.unit.faces.at(-1)?.material) } : shown,
  )
  const [missing, setMissing] = useState(false)
  const [busy, setBusy] = useState(false)
  const read = {
    torque: typedTorque(typed.torque, settings.torque),
    gasket: typedLength(typed.gasket, settings.length),
    minimumEngagement: typedLength(typed.minimumEngagement, settings.length),
  }
  const unread = (['torque', 'gasket', 'minimumEngagement'] as const).some(
    (name) => typed[name] !== shown[name] && read[name].state === 'fault',
  )
  /** A figure as it stands on the record need not be one that could be typed: it is left alone while nobody touches it. */
  const shownAs = (name: keyof typeof read): Typed => (typed[name] === shown[name] ? { state: 'empty' } : read[name])

  // Of a face that is on the record nothing half changed stays behind.
  function leave() {
    if (face !== undefined) clear()
    onClose()
  }

  async function keep() {
    const name = oneLine(typed.name)
    if (name === undefined) return setMissing(true)
    if (unread) return
    const { fields, unknown } = changesOf(shown, typed, {
      name,
      torque: quantityOf(read.torque),
      gasket: quantityOf(read.gasket),
      minimumEngagement: quantityOf(read.minimumEngagement),
      material: oneLine(typed.material),
      history: HISTORIES.find((one) => one === typed.history),
      note: lines(typed.note),
    })
    if (face !== undefined && Object.keys(fields).length + unknown.length === 0) return onClose()
    const id = face?.id ?? idFromName(name, idsUsed(folded.entries, 'face'), 'face')
    const body = { face: id, ...fields, ...(unknown.length > 0 ? { unknown } : {}) } as Body
    setBusy(true)
    const said = face === undefined ? words.unit.faceAdded(name) : words.unit.kept
    const written = await write(folded.id, [faceDescribed(body)], said)
    setBusy(false)
    if (written === null) return
    clear()
    onClose()
    if (face === undefined) go({ at: 'face', book: book.name, unit: folded.id, face: id })
  }

  return (
    <Sheet title={face === undefined ? words.unit.faceTitleNew : words.unit.faceTitle} onClose={leave}>
      <Form onKeep={keep}>
        <TextField
          label={words.unit.faceName}
          hint={words.unit.faceNameHint}
          value={typed.name}
          fault={missing && oneLine(typed.name) === undefined ? words.unit.faceNameMissing : ''}
          onInput={(name) => put({ name })}
          input={{ maxLength: 300 }}
        />
        <QuantityField
          label={words.unit.torque}
          hint={words.unit.torqueHint}
          unit={settings.torque}
          value={typed.torque}
          typed={shownAs('torque')}
          onInput={(torque) => put({ torque })}
        />
        <Choice
          label={words.unit.material}
          options={['', ...materialsWith(shown.material)].map((value) => ({
            value,
            words: value === '' ? words.unit.materialUnknown : value,
          }))}
          value={typed.material}
          onChoose={(material) => put({ material })}
        />
        <details class="more" open={face !== undefined}>
          <summary>{words.unit.more}</summary>
          <div class="stack">
            <div class="row">
              <QuantityField
                label={words.unit.gasket}
                unit={settings.length}
                value={typed.gasket}
                typed={shownAs('gasket')}
                onInput={(gasket) => put({ gasket })}
              />
              <QuantityField
                label={words.unit.engagement}
                hint={words.unit.engagementHint}
                unit={settings.length}
                value={typed.minimumEngagement}
                typed={shownAs('minimumEngagement')}
                onInput={(minimumEngagement) => put({ minimumEngagement })}
              />
            </div>
            <Choice
              label={words.unit.faceHistory}
              options={['', ...HISTORIES].map((value) => ({
                value,
                words: value === '' ? words.unit.asUnit : words.units.histories[value as (typeof HISTORIES)[number]],
              }))}
              value={typed.history}
              onChoose={(history) => put({ history })}
            />
            <TextField label={words.unit.note} long value={typed.note} onInput={(note) => put({ note })} />
          </div>
        </details>
        <button type="submit" class="button button--act" disabled={busy}>
          {face === undefined ? words.unit.add : words.unit.keep}
        </button>
      </Form>
      {face !== undefined && <StrikeOut folded={folded} face={face} onClose={onClose} />}
    </Sheet>
  )
}

function StrikeOut({ folded, face, onClose }: { folded: FoldedUnit; face: Face; onClose: () => void }) {
  const { write } = useApp()
  const [reason, setReason] = useState('')
  async function strikeOut() {
    const body = { face: face.id, ...given('reason', oneLine(reason)) }
    const written = await write(folded.id, [faceStruckOut(body)], words.unit.struckOut(face.name ?? face.id))
    if (written !== null) onClose()
  }
  return (
    <details class="more">
      <summary>{words.unit.strikeOut}</summary>
      <Form onKeep={strikeOut}>
        <p class="quiet">{words.unit.strikeOutWhat}</p>
        <TextField label={words.unit.reason} value={reason} onInput={setReason} input={{ maxLength: 300 }} />
        <button type="submit" class="button button--stop">
          <Icon name="cross" />
          {words.unit.strikeOut}
        </button>
      </Form>
    </details>
  )
}

function textsOf(face: Face | undefined, units: { length: string; torque: string }) {
  return {
    name: face === undefined ? '' : (face.name ?? face.id),
    torque: face?.torque === undefined ? '' : without(units.torque, writeQuantity(face.torque, 'torque')),
    gasket: face?.gasket === undefined ? '' : without(units.length, writeQuantity(face.gasket)),
    minimumEngagement:
      face?.minimumEngagement === undefined ? '' : without(units.length, writeQuantity(face.minimumEngagement)),
    material: nameOf(face?.material),
    history: (face?.history ?? '') as string,
    note: face?.note ?? '',
  }
}

/** The unit of the page stands beside the field already. */
function without(unit: string, text: string): string {
  return text.endsWith(` ${unit}`) ? text.slice(0, -unit.length - 1) : text
}

function nameOf(material: Face['material']): string {
  return (typeof material === 'string' ? material : material?.name) ?? ''
}

/** A material of another name, from a unit file, stays in the choice. */
function materialsWith(name: string): readonly string[] {
  return name === '' || MATERIAL_NAMES.includes(name) ? MATERIAL_NAMES : [...MATERIAL_NAMES, name]
}

function quantityOf(typed: Typed) {
  return typed.state === 'read' ? typed.value : undefined
}
