/**
 * Which addresses of the internet the tool may call in production.
 * A platform, or whoever registers one, names the URLs that we call. Without this check such a URL
 * could reach the school's own network, this machine, or a cloud's metadata service.
 */
import { lookup } from 'node:dns';
import { BlockList, isIP } from 'node:net';

export interface Address {
  address: string;
  family: 4 | 6;
}

/** Resolves a host name to all its addresses; rejects with a Node error (`ENOTFOUND`, `EAI_AGAIN` …). */
export type Resolve = (hostname: string) => Promise<readonly Address[]>;

/** The system's own name resolution. */
export const resolveByName: Resolve = (hostname) =>
  new Promise((resolve, reject) => {
    lookup(hostname, { all: true }, (error, found) =>
      error ? reject(error) : resolve(found as Address[]),
    );
  });

/** IPv4 special-purpose ranges, from the IANA IPv4 Special-Purpose Address Registry (RFC 6890). */
const SPECIAL_4: readonly (readonly [string, number])[] = [
  ['0.0.0.0', 8],
  ['10.0.0.0', 8],
  ['100.64.0.0', 10],
  ['127.0.0.0', 8],
  ['169.254.0.0', 16],
  ['172.16.0.0', 12],
  ['192.0.0.0', 24],
  ['192.0.2.0', 24],
  ['192.88.99.0', 24],
  ['192.168.0.0', 16],
  ['198.18.0.0', 15],
  ['198.51.100.0', 24],
  ['203.0.113.0', 24],
  ['224.0.0.0', 4],
  ['240.0.0.0', 4],
];

/** Within the global unicast block 2000::/3: protocol assignments with Teredo, documentation, 6to4 (RFC 6890, RFC 9637). */
const SPECIAL_6: readonly (readonly [string, number])[] = [
  ['2001::', 23],
  ['2001:db8::', 32],
  ['2002::', 16],
  ['3fff::', 20],
];

const special4 = blockList(SPECIAL_4, 'ipv4');
const special6 = blockList(SPECIAL_6, 'ipv6');
const global6 = blockList([['2000::', 3]], 'ipv6');

function blockList(ranges: readonly (readonly [string, number])[], family: 'ipv4' | 'ipv6') {
  const list = new BlockList();
  for (const [network, prefix] of ranges) list.addSubnet(network, prefix, family);
  return list;
}

/** True when `address` (an IP literal without brackets) is a public one. IPv4 carried inside IPv6 counts as that IPv4. */
export function isPublicAddress(address: string): boolean {
  const family = isIP(address);
  if (family === 4) return !special4.check(address, 'ipv4');
  if (family !== 6 || address.includes('%')) return false;
  const carried = carriedAddress(address);
  if (carried !== null) return isPublicAddress(carried);
  return global6.check(address, 'ipv6') && !special6.check(address, 'ipv6');
}

/** The IPv4 address inside a mapped (::ffff:0:0/96) or translated (64:ff9b::/96, RFC 6052) one, else null. */
function carriedAddress(address: string): string | null {
  const canonical = new URL(`http://[${address}]/`).hostname.slice(1, -1);
  const halves = /^(?:::ffff|64:ff9b:):([0-9a-f]{1,4}):([0-9a-f]{1,4})$/.exec(canonical);
  if (halves === null) return null;
  return halves
    .slice(1)
    .map((half) => Number.parseInt(half, 16))
    .flatMap((half) => [half >> 8, half & 255])
    .join('.');
}
