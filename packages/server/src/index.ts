export { type OpenShop, openShop } from './app/openShop.ts'
export type { Shop } from './app/shop.ts'
export {
  BadArchive,
  LOCAL_ARCHIVE_LIMITS,
  readArchive,
  type TakenIn,
  takeInArchive,
  writeArchive,
} from './archives/unitArchive.ts'
export { BadZip, openZip } from './archives/zipIn.ts'
export { zipOf } from './archives/zipOut.ts'
export { type BackedUp, backUp } from './backup/backup.ts'
export { type Checked, checkRecord } from './backup/check.ts'
export { type Fault, Faults } from './backup/fault.ts'
export { BACKUP_LIMITS } from './backup/manifest.ts'
export { BadBackup, isBackup, readBackup } from './backup/readBackup.ts'
export { NotEmpty, type Restored, restore } from './backup/restore.ts'
export { connect, type Database } from './database/connect.ts'
export type { Tables } from './database/tables.ts'
export { dataFolder, holdsRecord } from './dataFolder.ts'
export { FaultError } from './faultError.ts'
export { Damaged } from './photographs/photographs.ts'
export { type FoundUnit, findUnits } from './records/findUnits.ts'
export { type ForPaper, type PaperMaker, paperOfArchive } from './records/paper.ts'
export { stretchWords } from './seals/blocks.ts'
export { type CheckedPaper, checkPaper, isPaper, sealed } from './seals/paperSeal.ts'
export { checkZipSeal } from './seals/zipSeal.ts'
export { type Running, serve } from './serve.ts'
export { sqlStore } from './store/sqlStore.ts'
