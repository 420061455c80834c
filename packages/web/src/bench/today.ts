/** The day on the wall of the shop, ISO 8601. */
export function dayOf(date: Date): string {
  const two = (figure: number) => String(figure).padStart(2, '0')
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`
}
