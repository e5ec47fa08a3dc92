/** What is put into a phrase. Numbers are written the locale's way; texts stay as they are. */
export type Values = Readonly<Record<string, string | number>>;
