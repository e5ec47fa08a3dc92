import { readFile } from 'node:fs/promises';

/** What the school's administrator enters about the tool: the values of any LTI 1.3 tool. */
export interface ToolSettings {
  clientId: string;
  deploymentId: string;
  loginUrl: string;
  redirectUris: string[];
  targetLinkUri: string;
  keySetUrl: string;
}

/** An external activity that the teacher put into the course. */
export interface ActivitySettings {
  title: string;
  description: string;
  /** Points of its column in the gradebook; null: unmarked, no column. */
  points: number | null;
  custom: Record<string, string>;
}

export interface Settings {
  /** Where browsers and the tool reach the school, without a slash at the end. */
  origin: string;
  /** The name that the school signs with; stays when the origin moves to another port. */
  issuer: string;
  tool: ToolSettings;
  activities: ActivitySettings[];
}

export const readSettings = async (file: string): Promise<Settings> =>
  JSON.parse(await readFile(file, 'utf8')) as Settings;
