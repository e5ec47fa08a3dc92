import { MongoBinary } from 'mongodb-memory-server-core/lib/util/MongoBinary.js';

/** Runs as a process of its own, so that a download which does not move can be ended: DIR → path of a mongod. */
const [downloadDir] = process.argv.slice(2);
const path = await MongoBinary.getPath({ downloadDir: downloadDir ?? '.', checkMD5: true });
process.stdout.write(`\n${JSON.stringify({ path })}\n`);
