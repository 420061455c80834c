export { connect, type Database } from './database/connect.ts'
export { DatabaseError, type DatabaseFault, databaseFaultText } from './database/faults.ts'
export type { Tables } from './database/tables.ts'
export { sqlStore } from './store/sqlStore.ts'
