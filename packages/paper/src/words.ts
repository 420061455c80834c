/** Every sentence that stands on paper. */
export const words = {
  page: (page: number, of: number) => `Page ${page} of ${of}`,
  lettersLacked:
    'A box stands for a letter that this document’s font does not hold; copied or read out, the letter is there.',
}
