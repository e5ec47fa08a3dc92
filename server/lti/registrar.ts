/** For the administrator: registering a platform, which also makes our key pair towards it. */
import type { Database } from '../database/open.ts';
import type { PlatformFile } from '../platforms/file.ts';
import type { Registration } from '../platforms/registration.ts';
import type { Platforms } from '../platforms/store.ts';
import { type ToolKeySet, toolKeySet } from './keyset.ts';
import { createPlugin } from './plugin.ts';
import { createProvider, LAUNCH_PATH } from './provider.ts';
import { derive } from './seal.ts';
import { launchStore } from './store.ts';

export interface Registrar {
  /** A second time with the same issuer and client id: the same registration and key, with the new entries. */
  register(file: PlatformFile): Promise<Registration>;
  keySet(): Promise<ToolKeySet>;
}

export interface RegistrarParts {
  connection: Database['connection'];
  platforms: Platforms;
  secret: string;
}

export async function createRegistrar(parts: RegistrarParts): Promise<Registrar> {
  const { connection, platforms, secret } = parts;
  const store = launchStore(connection);
  await Promise.all([store.prepare(), platforms.prepare()]);
  const provider = await createProvider(ltijsSecret(secret), createPlugin(platforms, store));
  return {
    async register(file) {
      const { deployments, frameOrigins, ...addresses } = file;
      await provider.register(addresses);
      await platforms.save(file, { deployments, frameOrigins, authServer: file.authServer });
      const [made] = await platforms.byIssuer(file.issuer, file.clientId);
      if (made === undefined) throw new Error('the registration is gone');
      return made;
    },

    keySet: () => toolKeySet(store),
  };
}

/** ltijs signs and seals with a key of its own, so that ours never leaves our hands. */
export function ltijsSecret(secret: string): string {
  return derive(secret, 'ltijs');
}

/** What to enter at the platform, by the names most platforms give it. */
export function valuesForPlatform(url: string) {
  return {
    loginUrl: `${url}/lti/login`,
    redirectUrl: url + LAUNCH_PATH,
    targetLinkUrl: url + LAUNCH_PATH,
    keySetUrl: `${url}/lti/keys`,
  };
}
