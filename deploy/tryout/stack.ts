import { execFile } from 'node:child_process';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { type ChildProcess, ROOT, startChild, untilReady } from './child-process.ts';
import { DEMO_ACTIVITIES } from './demo.ts';
import {
  type Connected,
  keepPlan,
  makePlan,
  type Plan,
  type ToolValues,
  type Wished,
} from './plan.ts';

/** The environment of the tool in this try-out; the school gets none of it. */
const toolEnvironment = ({ data, tool, toolPort }: Plan): Record<string, string> => ({
  PLACEWEAVE_DATA: data,
  PLACEWEAVE_URL: tool,
  PLACEWEAVE_PORT: String(toolPort),
});

const settingsFile = (plan: Plan): string => join(plan.folder, 'school-settings.json');

/** What the school's administrator and Ms Wren would have entered in their platform. */
const writeSettings = (plan: Plan, values: ToolValues): Promise<void> => {
  const settings = {
    origin: plan.school,
    issuer: plan.issuer,
    tool: {
      clientId: plan.clientId,
      deploymentId: plan.deploymentId,
      loginUrl: values.loginUrl,
      redirectUris: [values.redirectUrl],
      targetLinkUri: values.targetLinkUrl,
      keySetUrl: values.keySetUrl,
    },
    activities: DEMO_ACTIVITIES.map(({ title, description, points }, index) => ({
      title,
      description,
      points,
      custom: { activity: plan.activities[index] ?? '' },
    })),
  };
  return writeFile(settingsFile(plan), JSON.stringify(settings, null, 2));
};

/** Lets the tool know the school, once; again when an address has moved to another port. */
const connect = async (plan: Plan): Promise<Plan> => {
  const { tool, school, connectedAt } = plan;
  if (connectedAt?.tool === tool && connectedAt.school === school) return plan;
  const file = join(plan.folder, 'plan.json');
  await writeFile(file, JSON.stringify(plan), { mode: 0o600 });
  const args = ['--import', 'tsx', 'deploy/tryout/connect.ts', file];
  const env = { ...process.env, ...toolEnvironment(plan) };
  const run = promisify(execFile)(process.execPath, args, { cwd: ROOT, env });
  const { stdout } = await run.catch((error: { stderr: string }) => {
    throw new Error(error.stderr.trim());
  });
  return { ...plan, ...(JSON.parse(stdout) as Connected), connectedAt: { tool, school } };
};

/** Everything that must be there before the processes start. */
export const prepare = async (data: string, wished?: Wished): Promise<Plan> => {
  const plan = await connect(await makePlan(data, wished));
  if (plan.values) await writeSettings(plan, plan.values);
  await keepPlan(plan);
  return plan;
};

export const startTool = async (plan: Plan): Promise<ChildProcess> => {
  const log = join(plan.folder, 'tool.log');
  const child = startChild('server/main.ts', [], toolEnvironment(plan), log);
  await untilReady(child, `${plan.tool}/health/ready`, 60_000);
  return child;
};

export const startSchool = async (plan: Plan): Promise<ChildProcess> => {
  const files = [settingsFile(plan), join(plan.folder, 'school.json')];
  const log = join(plan.folder, 'school.log');
  const child = startChild('deploy/tryout/school/main.ts', files, {}, log);
  await untilReady(child, `${plan.school}/keys`, 30_000);
  return child;
};
