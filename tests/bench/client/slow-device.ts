import type { Page } from 'playwright-core';

/** A cheap tablet on a school's crowded network: six times slower, 1.6 Mbit/s, 150 ms. */
const CPU_SLOWER = 6;
const BYTES_PER_SECOND = 1_600_000 / 8;
const LATENCY_MS = 150;

export const slowProcessor = async (page: Page): Promise<void> => {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: CPU_SLOWER });
};

export const slowNetwork = async (page: Page): Promise<void> => {
  const session = await page.context().newCDPSession(page);
  await session.send('Network.enable');
  await session.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: LATENCY_MS,
    downloadThroughput: BYTES_PER_SECOND,
    uploadThroughput: BYTES_PER_SECOND,
  });
};
