/**
 * The figure of an order that is to be made small, 0 or more; the same for the same sequence, which is not to be kept or changed. Above `bound` any figure above it
 * serves: the order is not taken then.
 */
export type Rate = (sequence: Int32Array, bound: number) => number
