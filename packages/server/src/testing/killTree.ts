import { execFileSync } from 'node:child_process'

/** SIGKILL to a process and its children, all in one go: nothing gets a chance to tidy up. */
export function killTree(pid: number): void {
  for (const each of [pid, ...childrenOf(pid)]) killHard(each)
}

export function killHard(pid: number): void {
  try {
    process.kill(pid, 'SIGKILL')
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ESRCH') throw error
  }
}

export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch {
    return false
  }
}

export function childrenOf(pid: number): number[] {
  try {
    return execFileSync('pgrep', ['-P', String(pid)], { encoding: 'utf8' })
      .trim()
      .split('\n')
      .map(Number)
  } catch {
    return []
  }
}
