/** Zod says nothing but "Invalid input" until it is told a language. */
import * as z from 'zod/mini'

z.config(z.locales.en())
