export function StoryPage(_: Record<string, unknown>) {
  return <p>StoryPage</p>
}
