/** One learning platform that may send people here, as its administrator and ours agreed on it. */
export interface Registration {
  id: string;
  name: string;
  /** Hosted platforms share one issuer between schools: only issuer and client id together name one. */
  issuer: string;
  clientId: string;
  authUrl: string;
  tokenUrl: string;
  /** Audience of our token requests where it is not the token address. */
  authServer: string | null;
  jwksUrl: string;
  /** The deployments that may launch; any other is refused. */
  deployments: string[];
  /** Further origins whose pages may show ours in a frame. */
  frameOrigins: string[];
  status: 'active' | 'suspended';
  /** Id of the key with which we sign towards this platform. */
  kid: string;
}

/** Who may frame our pages for this platform: where its pages come from, and what its administrator named. */
export function framingOrigins(registration: Registration): string[] {
  const own = [registration.issuer, registration.authUrl].flatMap(originOf);
  return [...new Set([...own, ...registration.frameOrigins])];
}

/** No star, comma or semicolon: an origin may stand in a header beside others. */
const PLAIN_ORIGIN = /^https?:\/\/(?:[a-z0-9._-]+|\[[0-9a-f:.]+\])(?::\d+)?$/;

/** The origin of an http(s) address, or nothing. */
export function originOf(address: string): string[] {
  if (!URL.canParse(address)) return [];
  const { origin } = new URL(address);
  return PLAIN_ORIGIN.test(origin) ? [origin] : [];
}
