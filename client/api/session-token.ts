/** The session's token as this page holds it; it travels in a header, never in an address. */
let token: string | null = null;

export const setToken = (value: string): void => {
  token = value;
};

export const heldToken = (): string | null => token;
