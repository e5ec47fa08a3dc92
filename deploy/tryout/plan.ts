import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { portFrom } from './ports.ts';

/** As the tool's own command prints them. */
export interface ToolValues {
  loginUrl: string;
  redirectUrl: string;
  targetLinkUrl: string;
  keySetUrl: string;
}

/** What the tool gives once it knows the school. */
export interface Connected {
  activities: string[];
  values: ToolValues;
}

/** What is settled at the first start and kept, so that a later one finds the same school and the same children's work. */
export interface Kept {
  toolPort: number;
  schoolPort: number;
  /** The school's name in its messages; stays when its port moves. */
  issuer: string;
  clientId: string;
  deploymentId: string;
  /** The tool's ids of the demo activities, in their order; empty until the tool knows the school. */
  activities: string[];
  /** What the tool said to enter in the platform; null until it knows the school. */
  values: ToolValues | null;
  /** The addresses with which the tool knows the school. */
  connectedAt: { tool: string; school: string } | null;
}

export interface Plan extends Kept {
  /** The tool's data folder. */
  data: string;
  /** The school's own folder in it, and the logs. */
  folder: string;
  tool: string;
  school: string;
}

const keptFile = (folder: string): string => join(folder, 'tryout.json');

const readKept = async (folder: string): Promise<Kept | null> => {
  const text = await readFile(keptFile(folder), 'utf8').catch(() => null);
  return text === null ? null : (JSON.parse(text) as Kept);
};

/** The tool and the school are on two *sites*, as a real platform and a tool are: `localhost` and `127.0.0.1`. */
const addresses = (toolPort: number, schoolPort: number) => ({
  tool: `http://localhost:${toolPort}`,
  school: `http://127.0.0.1:${schoolPort}`,
});

/** The ports to begin with. */
export interface Wished {
  tool: number;
  school: number;
}

const WISHED: Wished = { tool: 4600, school: 4610 };

export const makePlan = async (data: string, wished: Wished = WISHED): Promise<Plan> => {
  const folder = join(data, 'tryout');
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const kept = await readKept(folder);
  const toolPort = await portFrom(kept?.toolPort ?? wished.tool);
  const schoolPort = await portFrom(kept?.schoolPort ?? wished.school, [toolPort]);
  const at = addresses(toolPort, schoolPort);
  const fresh = {
    issuer: at.school,
    clientId: crypto.randomUUID(),
    deploymentId: '1',
    activities: [],
    values: null,
    connectedAt: null,
  };
  return { ...(kept ?? fresh), toolPort, schoolPort, data, folder, ...at };
};

export const keepPlan = async ({ data, folder, tool, school, ...kept }: Plan): Promise<void> =>
  writeFile(keptFile(folder), JSON.stringify(kept, null, 2), { mode: 0o600 });
