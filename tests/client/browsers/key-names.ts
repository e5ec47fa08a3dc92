/** The keys that have no sign of their own, by the names that browsers give them, as WebDriver writes them. */
const CODES: Readonly<Record<string, string>> = {
  Backspace: '\uE003',
  Tab: '\uE004',
  Enter: '\uE007',
  Shift: '\uE008',
  Control: '\uE009',
  Escape: '\uE00C',
  PageUp: '\uE00E',
  PageDown: '\uE00F',
  End: '\uE010',
  Home: '\uE011',
  ArrowLeft: '\uE012',
  ArrowUp: '\uE013',
  ArrowRight: '\uE014',
  ArrowDown: '\uE015',
  Delete: '\uE017',
};

/** The keys of a chord such as `Control+z`; `+` alone is a key. */
export const chord = (keys: string): string[] => {
  const names = keys.length === 1 ? [keys] : keys.split('+');
  return names.map((name) => {
    const code = CODES[name] ?? name;
    if (code.length !== 1) throw new Error(`no such key: ${name}`);
    return code;
  });
};
