import { face } from './face.ts'
import { faults, figureFaults } from './faults.ts'
import { joint } from './joint.ts'
import { parts } from './parts.ts'
import { photograph } from './photograph.ts'
import { readings } from './readings.ts'
import { sending } from './sending.ts'
import { settings } from './settings.ts'
import { shell } from './shell.ts'
import { story } from './story.ts'
import { tray } from './tray.ts'
import { unit } from './unit.ts'
import { units } from './units.ts'
import { verdict } from './verdict.ts'

export const en = {
  faults,
  figureFaults,
  shell,
  photograph,
  units,
  unit,
  story,
  parts,
  tray,
  readings,
  settings,
  sending,
  face,
  verdict,
  joint,
}
