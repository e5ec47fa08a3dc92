/**
 * The try-out school: a small learning platform for this computer only.
 * `tsx deploy/tryout/school/main.ts SETTINGS.json STATE.json` serves it at the origin of the settings.
 */
import { createApp } from './app.ts';
import { openSchool } from './school.ts';
import { readSettings } from './settings.ts';

const refuse = (reason: string): never => {
  process.stderr.write(`${reason}\n`);
  process.exit(2);
};

if (process.env.NODE_ENV === 'production') {
  refuse('The try-out school lets anybody be anybody; it does not run with NODE_ENV=production.');
}
const [settingsFile, stateFile] = process.argv.slice(2);
if (!settingsFile || !stateFile) {
  refuse('Say which files: main.ts SETTINGS.json STATE.json');
} else {
  const settings = await readSettings(settingsFile);
  const { hostname, port, origin } = new URL(settings.origin);
  const server = createApp(await openSchool(settings, stateFile)).listen(Number(port), hostname);
  server.on('listening', () => console.log(`The school is open at ${origin}`));
  server.on('error', ({ message }) => refuse(`The school cannot open at ${origin}: ${message}`));
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.on(signal, () => {
      server.close(() => process.exit(0));
      server.closeAllConnections();
    });
  }
}
