/** A cover made from a lattice, so that a finite-element mesh and an outline of it are at hand. */
import type { Cover, Point } from '../../packages/engine/src/unit.ts'
import { cornerOf, type Lattice, outlinesOf, turningArea } from './blocks.ts'

export type LatticeCover = {
  lattice: Lattice
  /** Corners of the lattice with a bolt, and where they lie. */
  boltCorners: Point[]
  bolts: Point[]
  cover: Cover & { young: number; poisson: number }
}

/** `thickness` of most blocks, and `thick` of those of the thicker part, mm. Aluminium. */
export function latticeCover(lattice: Lattice, boltCorners: Point[], thickness: number, thick: number): LatticeCover {
  const around = outlinesOf(lattice, () => true)
  const openings = around.filter((line) => turningArea(line) < 0)
  const regions = outlinesOf(lattice, (here) => here === thick)
  return {
    lattice,
    boltCorners,
    bolts: boltCorners.map((corner) => cornerOf(lattice, corner)),
    cover: {
      outline: around.find((line) => turningArea(line) > 0)!,
      ...(openings.length > 0 ? { openings } : {}),
      thickness,
      ...(regions.length > 0 ? { regions: regions.map((outline) => ({ outline, thickness: thick })) } : {}),
      young: 70_000,
      poisson: 0.33,
    },
  }
}
