/** What JSON can hold, as read from text. */
export type Json = null | boolean | number | string | Json[] | { [name: string]: Json }
