/**
 * `npm run -s deliveries` lists the marks that are not in their gradebook, each with its reason;
 * `… retry ID` tries one again now, after a look at what the gradebook holds;
 * `… release ID` sends one that is held, over what was changed in the gradebook.
 */
import { readConfig } from '../config.ts';
import { visitDatabase } from '../database/open.ts';
import { type Outbox, outboxStore } from '../delivery/outbox-store.ts';
import { REASONS } from '../delivery/reasons.ts';
import type { DeliveryRow } from '../delivery/row.ts';
import { createLog } from '../log.ts';

const USAGE = `Usage: npm run -s deliveries
       npm run -s deliveries -- retry ID
       npm run -s deliveries -- release ID`;

type Reply = { ok: true; value: unknown } | { ok: false; complaint: string };
type Command = (outbox: Outbox, id: string) => Promise<Reply>;

const COMMANDS: Record<string, { words: number; run: Command }> = {
  list: { words: 0, run: list },
  retry: { words: 1, run: retry },
  release: { words: 1, run: release },
};

async function list(outbox: Outbox): Promise<Reply> {
  return { ok: true, value: (await outbox.unsettled()).map(shown) };
}

async function retry(outbox: Outbox, id: string): Promise<Reply> {
  const found = await outbox.decide(id, ['stuck', 'waiting'], false, Date.now());
  return decided(found, id, 'waits or is stuck');
}

async function release(outbox: Outbox, id: string): Promise<Reply> {
  return decided(await outbox.decide(id, ['held'], true, Date.now()), id, 'is held');
}

function decided(found: boolean, id: string, which: string): Reply {
  if (found) return { ok: true, value: { delivery: id, state: 'waiting' } };
  return {
    ok: false,
    complaint: `There is no delivery ${id} that ${which}; see: npm run -s deliveries`,
  };
}

function shown(row: DeliveryRow) {
  const { _id, state, reason, tries, lastStatus, registration, deployment, lineitem, subject } =
    row;
  return {
    ...{ delivery: _id, state, reason, because: reason && REASONS[reason] },
    ...{ registration, deployment, lineitem, subject, tries, lastStatus },
    lastTriedAt: timeText(row.lastTry),
    nextTryAt: state === 'waiting' ? timeText(row.nextTry) : null,
  };
}

function timeText(ms: number | null): string | null {
  return ms === null ? null : new Date(ms).toISOString();
}

async function main([name = 'list', ...words]: string[]): Promise<Reply> {
  const command = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (command === undefined || words.length !== command.words)
    return { ok: false, complaint: USAGE };
  const settings = readConfig(process.env);
  if (!settings.ok) return { ok: false, complaint: settings.complaints.join('\n') };
  const opened = await visitDatabase(settings.config, createLog('silent'));
  if (!opened.ok) return { ok: false, complaint: opened.fault.text };
  const { connection, close } = opened.value;
  try {
    return await command.run(outboxStore(connection), words[0] ?? '');
  } finally {
    await close();
  }
}

const reply = await main(process.argv.slice(2));
if (reply.ok) console.log(JSON.stringify(reply.value, null, 2));
else console.error(reply.complaint);
process.exitCode = reply.ok ? 0 : 1;
