import { readFile } from 'node:fs/promises';

export type JsonRead = { ok: true; value: unknown } | { ok: false; complaints: string[] };

/** The JSON in a file that somebody named on the command line. */
export async function readJson(file: string): Promise<JsonRead> {
  const text = await readFile(file, 'utf8').catch(codeOf);
  if (typeof text !== 'string') return bad(`${file} cannot be read (${text.code})`);
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch (fault) {
    return bad(`${file} is not JSON: ${(fault as Error).message}`);
  }
}

function codeOf({ code = 'unknown' }: NodeJS.ErrnoException): { code: string } {
  return { code };
}

function bad(complaint: string): JsonRead {
  return { ok: false, complaints: [complaint] };
}
