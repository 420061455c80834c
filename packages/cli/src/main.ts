export async function main(_args: string[], _world: unknown): Promise<number> {
  return 3
}
