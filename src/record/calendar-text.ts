/** Longest physical line of a calendar file in octets, without its end (RFC 5545 section 3.1). */
const LONGEST_LINE = 75;
const LINE_END = '\r\n';

const ESCAPED: Readonly<Record<string, string>> = { '\\': '\\\\', ';': '\\;', ',': '\\,', '\n': '\\n' };

/** A TEXT value as it stands in a calendar file (RFC 5545 section 3.3.11): every kind of line end becomes `\n`; a colon stays. */
export const calendarText = (words: string): string => words.replace(/\r\n?/g, '\n').replace(/[\\;,\n]/g, (sign) => ESCAPED[sign] ?? sign);

/**
 * One content line, folded: no physical line above 75 octets, and no character cut in two. Ends with CRLF.
 * The line must not contain a line end itself; `calendarText` sees to that for values.
 */
export function calendarLine(line: string): string {
  const physical: string[] = [];
  let current = '';
  let octets = 0;
  for (const character of line) {
    const size = octetsOf(character);
    if (octets + size > LONGEST_LINE) {
      physical.push(current);
      // The space that marks a continuation counts as well.
      [current, octets] = [' ', 1];
    }
    current += character;
    octets += size;
  }
  return [...physical, current].join(LINE_END) + LINE_END;
}

const octetsOf = (character: string): number => new TextEncoder().encode(character).length;
