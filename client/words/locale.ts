import { readBlock } from '../launch/block.ts';

/** What the pages can be read in. `en-XA` and `ar-XB` are the test locales of the Unicode CLDR: English made to stand out, and English from right to left. */
const LANGUAGES = ['en', 'es', 'ar-xb'];
const KEY = 'locale';

export const languageOf = (tag: string): string => tag.toLowerCase().split('-')[0] ?? '';

/** Browsers hand out tags that the standard does not know ("en-US@posix"): those are no use to Intl. */
const isTag = (tag: string): boolean => {
  try {
    return Intl.getCanonicalLocales(tag).length > 0;
  } catch {
    return false;
  }
};

const isKnown = (tag: string): boolean =>
  LANGUAGES.includes(languageOf(tag)) || LANGUAGES.includes(tag.toLowerCase());

/** What the platform said at the launch; this tab remembers it through a reload. */
const ofLaunch = (): string | null => {
  const told = readBlock<{ locale?: string | null }>('boot')?.locale ?? null;
  try {
    if (told !== null) sessionStorage.setItem(KEY, told);
    return told ?? sessionStorage.getItem(KEY);
  } catch {
    return told;
  }
};

/** The languages that the browser asks for, as far as they are tags that Intl knows. */
export const browserLanguages: readonly string[] = navigator.languages.filter(isTag);

/** The reader's language: the platform's, else the browser's, as far as it is among ours. */
export const locale: string =
  [ofLaunch() ?? '', ...browserLanguages].filter(isTag).find(isKnown) ?? 'en';

const TEST_LOCALES = ['en-xa', 'ar-xb'];
/** How numbers and moments are written. */
export const numberLocale = TEST_LOCALES.includes(locale.toLowerCase()) ? 'en' : locale;

document.documentElement.lang = locale;
document.documentElement.dir = languageOf(locale) === 'ar' ? 'rtl' : 'ltr';
