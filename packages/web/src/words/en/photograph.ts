export const photograph = {
  take: 'Take photograph',
  choose: 'From files',
  keeping: 'Keeping it…',
  unreadable: (name: string) => `This browser cannot read ${name} as a picture. Take it as JPEG, or choose another.`,
  away: 'This photograph is not on this device. It comes with signal.',
  fetching: 'The photograph is coming…',
}
