export type Theme = 'light' | 'dark' | 'print' | 'high-contrast'

/** The colours of one look. Every state also has its own shape, pattern and word, so none of them is needed to read a drawing. */
export type Palette = {
  paper: string
  ink: string
  /** Names, leaders and dimension lines; at least 4.5 : 1 on `paper`. */
  quiet: string
  case: string
  caseHatch: string
  part: string
  partHatch: string
  bracket: string
  bracketHatch: string
  gasket: string
  bolt: string
  boltLine: string
  engaged: string
  fits: string
  may: string
  cannot: string
  /** Text and marks on a ground of one of the three states. */
  onState: string
}

export const PALETTES: Record<Theme, Palette> = {
  light: {
    paper: '#fdfcf9',
    ink: '#1b2328',
    quiet: '#55626b',
    case: '#dde4e7',
    caseHatch: '#93a2ab',
    part: '#f0e8d8',
    partHatch: '#b7a67f',
    bracket: '#e5e0ea',
    bracketHatch: '#9f93b3',
    gasket: '#4b4038',
    bolt: '#c3ced6',
    boltLine: '#27343c',
    engaged: '#00706b',
    fits: '#17663a',
    may: '#855200',
    cannot: '#b3201b',
    onState: '#ffffff',
  },
  dark: {
    paper: '#14191c',
    ink: '#edf1f2',
    quiet: '#a7b4bb',
    case: '#28343b',
    caseHatch: '#5c6f7a',
    part: '#3a3326',
    partHatch: '#7d6d4a',
    bracket: '#342f40',
    bracketHatch: '#75698d',
    gasket: '#c9b8a4',
    bolt: '#7d8c96',
    boltLine: '#e4ebee',
    engaged: '#5fe0d6',
    fits: '#6fd699',
    may: '#f2b950',
    cannot: '#ff8a80',
    onState: '#10151a',
  },
  // For a screen in the sun: white ground, black lines, and state colours so dark that glare leaves them readable.
  'high-contrast': {
    paper: '#ffffff',
    ink: '#000000',
    quiet: '#000000',
    case: '#ffffff',
    caseHatch: '#5a5a5a',
    part: '#ffffff',
    partHatch: '#5a5a5a',
    bracket: '#ffffff',
    bracketHatch: '#5a5a5a',
    gasket: '#000000',
    bolt: '#d4d4d4',
    boltLine: '#000000',
    engaged: '#004b47',
    fits: '#004d22',
    may: '#5c3600',
    cannot: '#8f0000',
    onState: '#ffffff',
  },
  print: {
    paper: '#ffffff',
    ink: '#000000',
    quiet: '#333333',
    case: '#ffffff',
    caseHatch: '#8a8a8a',
    part: '#ffffff',
    partHatch: '#8a8a8a',
    bracket: '#ffffff',
    bracketHatch: '#8a8a8a',
    gasket: '#222222',
    bolt: '#ececec',
    boltLine: '#000000',
    engaged: '#000000',
    fits: '#000000',
    may: '#000000',
    cannot: '#000000',
    onState: '#ffffff',
  },
}

export const FONT = "system-ui, -apple-system, 'Segoe UI', Roboto, 'Noto Sans', sans-serif"
