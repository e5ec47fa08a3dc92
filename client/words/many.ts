/** One, or several: languages that need more forms choose in their own file. */
export const many = (count: unknown, one: string, more: string): string =>
  Number(count) === 1 ? one : more;
