/** Errors that a person can put right: the fault as data, for programs, and in words. */

type Coded = { code: string }

/** A sentence for each code of a fault; one without does not compile. */
export type Words<F extends Coded> = { [C in F['code']]: (fault: Extract<F, { code: C }>) => string }

export abstract class FaultError<F extends Coded> extends Error {
  readonly fault: F
  constructor(name: string, words: Words<F>, fault: F, cause?: unknown) {
    super((words[fault.code as F['code']] as (fault: F) => string)(fault), { cause })
    this.name = name
    this.fault = fault
  }
}
