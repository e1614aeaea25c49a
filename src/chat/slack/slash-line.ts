/**
 * The line somebody meant by the text after `/cure`: a line of its own when it begins with a command word,
 * otherwise what follows the word `cure`. Nothing at all asks for help.
 */
export function slashLine(text: string, isCommandLine: (line: string) => boolean): string {
  const line = text.trim();
  if (line === '') return 'help';
  return isCommandLine(line) ? line : `cure ${line}`;
}
