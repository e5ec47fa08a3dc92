// Loaded into a child before its own code: its input closes when the parent ends, however that happens.
process.stdin.resume().on('end', () => process.kill(process.pid, 'SIGTERM'));
